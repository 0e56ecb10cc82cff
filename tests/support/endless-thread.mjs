// Stands in for the search's thread: tells nothing and never ends.
for (;;);
