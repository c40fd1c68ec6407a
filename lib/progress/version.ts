/**
 * Goes up whenever `observationsOf`, or what it is told of a piece, makes something else of the same marked section: stored
 * observations of another version are then made anew from the stored result and what tutors said to it.
 */
export const OBSERVATION_VERSION = 3;

/** Goes up whenever the same observations add up to another tally, or to one of another shape. */
const TALLY_VERSION = 2;

/** Goes up whenever the same observations make another learner of the model, or one of another shape. */
const LEARNER_VERSION = 1;

/** What stored tallies and learners were made by; those of another one are built anew. */
export const PROGRESS_VERSION = `${OBSERVATION_VERSION}.${TALLY_VERSION}.${LEARNER_VERSION}`;
