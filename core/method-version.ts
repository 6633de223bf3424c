/** Number of the way a photo is measured. Raise it with every change that moves a measure: photos are then measured anew. */
export const METHOD_VERSION = '1';
