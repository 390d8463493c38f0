/** What stands on which page. */

interface Block {
  /** Millimetres. */
  readonly height: number
}

/** Blocks one below another with a gap, on as many pages as it takes; one that is too high has its own. */
export const paged = <One extends Block>(
  blocks: readonly One[],
  height: number,
  gap: number,
): readonly (readonly (One & { readonly y: number })[])[] => {
  const pages: (One & { readonly y: number })[][] = []
  let y = 0
  for (const block of blocks) {
    const page = pages.at(-1)
    if (page !== undefined && y + block.height <= height) page.push({ ...block, y })
    else {
      y = 0
      pages.push([{ ...block, y }])
    }
    y += block.height + gap
  }
  return pages
}

/** In runs that are no higher than so much together, each of one at least. */
export const inRuns = <One extends Block>(
  blocks: readonly One[],
  height: number,
): readonly (readonly One[])[] => {
  const runs: One[][] = []
  let sum = 0
  for (const block of blocks) {
    const run = runs.at(-1)
    if (run !== undefined && sum + block.height <= height) run.push(block)
    else {
      sum = 0
      runs.push([block])
    }
    sum += block.height
  }
  return runs
}
