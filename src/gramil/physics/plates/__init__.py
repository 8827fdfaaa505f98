"""Thin plates of wood with bars glued to them: how they deflect under a load, how they vibrate, what a shaving changes.

Lengths in mm, moduli and stresses in MPa, densities in kg/m3, forces in N, couples in N mm, frequencies in Hz. A plate
lies in x and y; z points out of its first face, and bars stand on either.
"""
