"""In and out of the record: files brought in and taken out, copies made, proved and put back."""
