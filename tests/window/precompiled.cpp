// Holds the headers that every window test reads.
