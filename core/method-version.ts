/**
 * Version of the way a photo is measured. Raise it when the same photo would give other numbers, so that stored
 * reports can be told apart and measured anew.
 */
export const METHOD_VERSION = '15';
