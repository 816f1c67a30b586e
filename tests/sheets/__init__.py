"""Cut files as other workshops would write them, each with its truth, to measure the reader by."""
