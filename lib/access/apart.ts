/** What is said of people and lies apart from the log, under the id of the command that brought it. */
export const APART = ['name', 'reasons', 'text', 'initials', 'needs'] as const

/**
 * `name` of a guest; `reasons` of their needs; `text` that somebody typed about them (no command
 * brings any yet); `initials` of who read, labelled or threw out; `needs` of who tastes.
 */
export type ApartKind = (typeof APART)[number]

export interface SetApart {
  readonly kind: ApartKind
  /** A name or initials as they were said; reasons and needs as JSON. */
  readonly body: string
}

/** What is of guests: gone at the close, and when one is forgotten. */
export const OF_GUESTS = ['name', 'reasons', 'text'] as const satisfies readonly ApartKind[]
