"""One column a field: the form, the reader, the message."""
