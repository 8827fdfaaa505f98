"""Into and out of the record: files imported and exported, copies made, proved and put back."""
