/** What a sentence needs of where it is said; the same in every language. */

/** What an id is called on the screens. */
export type NameOf = (id: string) => string

/** How a moment is said; each screen knows its time zone. */
export type SayTime = (at: number) => string

/** What a reason says needs names, times, and when it is said. */
export interface SaidHere {
  readonly name: NameOf
  readonly time: SayTime
  readonly now: number
  /** Minutes that a batch takes with the walk, and where and by whom; null where it isn't known. */
  readonly making: (component: string) => {
    readonly minutes: number
    readonly where: string
    readonly who: string
  } | null
}

/** A sentence in up to three stretches, the middle one said with stress. */
export interface Said {
  readonly before: string
  readonly strong: string
  readonly rest: string
}
