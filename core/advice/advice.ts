/** What the grower may be advised to do. */
export const ADVICE_KINDS = ['photograph', 'turn', 'shorten', 'wait', 'plan', 'clear', 'keep'] as const;
export type AdviceKind = (typeof ADVICE_KINDS)[number];

export const SURENESSES = ['sure', 'likely', 'unsure'] as const;
export type Sureness = (typeof SURENESSES)[number];

/** One piece of advice: what, where, how much, why and how sure, each a short plain sentence. */
export interface Advice {
  readonly kind: AdviceKind;
  /** 0 nothing to do, 1 when convenient, 2 this week, 3 today. */
  readonly urgency: 0 | 1 | 2 | 3;
  readonly what: string;
  readonly where: string | null;
  readonly howMuch: string | null;
  readonly why: string;
  readonly sureness: Sureness;
  /** Safety words that stand beside the advice: knife, sap, sprays, a cut cannot be undone. */
  readonly caution: string | null;
}
