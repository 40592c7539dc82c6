package say

// NotKnown stands where a curve ends because nobody knows how it goes on.
const NotKnown = "not known"
