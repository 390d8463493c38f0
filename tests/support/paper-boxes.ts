/** Boxes of a page: inside one another, and apart. Millimetres. */
import type { Box } from '#lib/paper/page/papers.ts'

const ROUNDING = 1e-6

export const isInside = (one: Box, outer: Box): boolean =>
  one.x >= outer.x - ROUNDING &&
  one.y >= outer.y - ROUNDING &&
  one.x + one.width <= outer.x + outer.width + ROUNDING &&
  one.y + one.height <= outer.y + outer.height + ROUNDING

const overlap = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width - ROUNDING &&
  other.x < one.x + one.width - ROUNDING &&
  one.y < other.y + other.height - ROUNDING &&
  other.y < one.y + one.height - ROUNDING

export const areApart = (boxes: readonly Box[]): boolean =>
  boxes.every((one, at) => boxes.slice(at + 1).every((other) => !overlap(one, other)))
