export interface Later {
  /** Does it once, a while later; asked again meanwhile, still once. */
  ask(): void
  cancel(): void
}

export const createLater = (
  later: (act: () => void, ms: number) => () => void,
  ms: number,
  act: () => void,
): Later => {
  let stop: (() => void) | null = null
  return {
    ask: () => {
      stop ??= later(() => {
        stop = null
        act()
      }, ms)
    },
    cancel: () => {
      stop?.()
      stop = null
    },
  }
}
