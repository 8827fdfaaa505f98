"""The shop's record: one database file for what changes from day to day, and what is made already.

Each module is one subject and offers plain functions over an open store. Every change is one transaction: a function
that has returned has saved. The clock is passed in.
"""
