/** What the person in charge looked at before accepting a caution. No free text: it is in the log. */
export const CAUTION_REASONS = [
  'guest-accepts',
  'label-read',
  'supplier-asked',
  'recipe-checked',
] as const
export type CautionReason = (typeof CAUTION_REASONS)[number]
