/** Why a plant that hangs limp is left out: its outline says nothing of its shape. */
export const LIMP = 'limp from drought';

/** Reasons that are offered for leaving a sitting out, the commonest first. */
export const LEFT_OUT_REASONS = [LIMP, 'knocked or blown about', 'something stood before it'] as const;
