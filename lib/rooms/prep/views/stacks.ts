/** How loads and days are drawn over a pan, so that the fullest of them has room: heights in CSS pixels. */

/** A block has room for its number; so many of them stand on each other in `STACK_PX`. */
const BLOCK_PX = 18
const GAP_PX = 2
const MOST_BLOCKS = 5
/** How high the fullest stack is, and a dot with the room around it. */
export const STACK_PX = MOST_BLOCKS * (BLOCK_PX + GAP_PX)
const DOT_PX = 11
const COLUMNS = 3

/** Loads that one block may be. */
const SCALES = [1, 2, 5, 10, 20]
const MOST_SCALE = 40

export interface Stacked {
  readonly loads: number
  /** Portions of its loads together. */
  readonly made: number
  /** Portions in the larder. */
  readonly atHand: number
}

/** How many loads one block is, the same over all pans: the fewest with which every stack has room. */
export const loadsABlock = (pans: readonly Pick<Stacked, 'loads' | 'atHand'>[]): number =>
  SCALES.find((scale) =>
    pans.every(
      ({ loads, atHand }) => Math.ceil(loads / scale) + (atHand > 0 ? 1 : 0) <= MOST_BLOCKS,
    ),
  ) ?? MOST_SCALE

export interface Block {
  readonly portions: number
  readonly of: 'load' | 'larder'
  readonly height: number
}

/**
 * Blocks of a stack, the topmost first: its loads, a rest of fewer loads on top, and what is in the
 * larder below. As high as their portions say, `most` being the fullest, none lower than its number.
 */
export const blocksOf = (
  { loads, made, atHand }: Stacked,
  scale: number,
  most: number,
): readonly Block[] => {
  const each = loads === 0 ? 0 : made / loads
  const count = Math.ceil(loads / scale)
  const ofLoads = Array.from({ length: count }, (_, block) => ({
    of: 'load' as const,
    portions: Math.round(each * (block === 0 ? loads - scale * (count - 1) : scale)),
  }))
  const blocks = [...ofLoads, ...(atHand > 0 ? [{ of: 'larder' as const, portions: atHand }] : [])]
  const least = BLOCK_PX + GAP_PX
  const whole = Math.max(
    least * blocks.length,
    (STACK_PX * (made + atHand)) / Math.max(1, most, made + atHand),
  )
  const low = new Set<number>()
  const unit = (): number => {
    const rest = blocks.filter((_, index) => !low.has(index))
    const sum = rest.reduce((all, { portions }) => all + portions, 0)
    return (whole - least * low.size) / Math.max(1, sum)
  }
  for (let before = -1; before < low.size; ) {
    before = low.size
    const one = unit()
    for (const [index, { portions }] of blocks.entries()) if (portions * one < least) low.add(index)
  }
  const one = unit()
  return blocks.map((block, index) => ({
    ...block,
    height: Math.floor(low.has(index) ? BLOCK_PX : block.portions * one - GAP_PX),
  }))
}

export interface DotPlace {
  readonly left: number
  readonly bottom: number
}

/** Days as dots at the height of what they want, the fewest first: none over another, none too high. */
export const dotPlaces = (portions: readonly number[], most: number): readonly DotPlace[] => {
  const bottoms = portions.map((one) => Math.round((one / Math.max(1, most)) * STACK_PX) - DOT_PX)
  const inColumn = (index: number) => bottoms[index] ?? Number.NaN
  for (let index = 0; index < bottoms.length; index += 1) {
    const below = index < COLUMNS ? 0 : inColumn(index - COLUMNS) + DOT_PX
    bottoms[index] = Math.max(inColumn(index), below)
  }
  for (let index = bottoms.length - 1; index >= 0; index -= 1) {
    const above = index + COLUMNS < bottoms.length ? inColumn(index + COLUMNS) : STACK_PX
    bottoms[index] = Math.min(inColumn(index), above - DOT_PX)
  }
  return bottoms.map((bottom, index) => ({ left: (index % COLUMNS) * DOT_PX, bottom }))
}
