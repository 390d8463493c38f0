/** Of a drawn thing, CSS pixels, measured from the same corner as all others. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

interface Point {
  readonly x: number
  readonly y: number
}

const toward = (from: Point, to: Point, by: number): Point => {
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  return length === 0
    ? from
    : { x: from.x + ((to.x - from.x) / length) * by, y: from.y + ((to.y - from.y) / length) * by }
}

const far = (one: Point, other: Point): number => Math.hypot(one.x - other.x, one.y - other.y)

const say = ({ x, y }: Point): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`

/** A closed path through corners that are rounded, each as far as its sides allow. */
const rounded = (corners: readonly Point[], radius: number): string => {
  const distinct = corners.filter((one, index) => far(one, corners.at(index - 1) ?? one) > 0.5)
  const drawn = distinct.map((corner, index) => {
    const before = distinct.at(index - 1) ?? corner
    const after = distinct[(index + 1) % distinct.length] ?? corner
    const by = Math.min(radius, far(before, corner) / 2, far(corner, after) / 2)
    const [from, to] = [toward(corner, before, by), toward(corner, after, by)]
    return `${index === 0 ? 'M' : 'L'}${say(from)} Q${say(corner)} ${say(to)}`
  })
  return `${drawn.join(' ')} Z`
}

/** What is above the panel and so near that one outline can hold both, CSS pixels. */
const NEAR_PX = 40

/**
 * One outline around a panel and what it is about: it runs up around each that stands right above
 * the panel, and around each that stands farther off by itself.
 *
 * @param pad how far the outline keeps from what it runs around, CSS pixels
 * @returns the path's `d`, in the pixels of the boxes
 */
export const notchPath = (
  panel: Box,
  abouts: readonly Box[],
  { pad, radius }: { readonly pad: number; readonly radius: number },
): string => {
  const bumps = abouts
    .map((box) => ({
      left: Math.max(panel.left, box.left - pad),
      right: Math.min(panel.right, box.right + pad),
      top: box.top - pad,
      bottom: box.bottom + pad,
    }))
    // What is walked out of sight has no outline to run around.
    .filter(({ left, right }) => right - left > 2 * pad)
    .sort((one, other) => one.left - other.left)
  const isNear = ({ bottom, top }: Box) => panel.top - bottom < NEAR_PX && top < panel.top
  const edge = bumps.filter(isNear).flatMap(({ left, right, top }) => {
    const [from, to] = [
      left - panel.left < radius ? panel.left : left,
      panel.right - right < radius ? panel.right : right,
    ]
    return [
      { x: from, y: panel.top },
      { x: from, y: top },
      { x: to, y: top },
      { x: to, y: panel.top },
    ]
  })
  const { left, top, right, bottom } = panel
  const [first, last] = [edge[0], edge.at(-1)]
  const around = [
    ...(first && first.x === left ? [] : [{ x: left, y: top }]),
    ...edge.filter((point, index) => {
      const isFoot = point.y === top && (index === 0 || index === edge.length - 1)
      return !(isFoot && (point.x === left || point.x === right))
    }),
    ...(last && last.x === right ? [] : [{ x: right, y: top }]),
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]
  const alone = bumps
    .filter((bump) => !isNear(bump))
    .map((box) =>
      rounded(
        [
          { x: box.left, y: box.top },
          { x: box.right, y: box.top },
          { x: box.right, y: box.bottom },
          { x: box.left, y: box.bottom },
        ],
        radius,
      ),
    )
  return [rounded(around, radius), ...alone].join(' ')
}
