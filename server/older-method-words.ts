/** Stands with the notes of a photo whose numbers come from an older method. */
export const OLDER_METHOD =
  'Measured by an older method. The numbers stand until the photo is measured anew, which the desk shows under Keeping.';

/** Why a photo has no numbers though it was measured once. */
export const UNREAD =
  'The numbers of this photo come from an older version, in a form that this one cannot read. The photo is safe; measure it again.';
