/** Limits of the job document that rooms without the schema need as well. */

/** Longest entry, characters; the expression reader refuses longer ones as well. */
export const LONGEST_ENTRY = 200;

/** Longest job file, characters. A job of 500 parts takes about 1 MB; beyond this the file is something else. */
export const LONGEST_FILE = 20_000_000;
