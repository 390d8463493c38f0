/** Where a bought thing lies in the house, as a list of purchases is walked. */
export const LIES = ['dry-store', 'cooler', 'freezer', 'that-day'] as const

/** `that-day`: it is bought on the day itself and lies nowhere. */
export type Lies = (typeof LIES)[number]
