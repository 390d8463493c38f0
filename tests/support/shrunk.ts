/** The fewest acts of a history that still break what all of them broke. */

/** Leaves out halves, then quarters, and so on to single ones, as long as it stays broken. */
export const shrunk = <Act>(
  acts: readonly Act[],
  isBroken: (acts: readonly Act[]) => boolean,
): readonly Act[] => {
  let kept = acts
  for (let size = Math.ceil(acts.length / 2); size >= 1; size = Math.floor(size / 2)) {
    for (let again = true; again; ) {
      again = false
      for (let from = kept.length - size; from > -size; from -= size) {
        const start = Math.max(0, from)
        const without = [...kept.slice(0, start), ...kept.slice(from + size)]
        if (without.length === kept.length || !isBroken(without)) continue
        kept = without
        again = true
      }
    }
  }
  return kept
}
