import type { BuildChoice } from '#lib/service/events/build-choice.ts'

/** The food of a choice as one text: its item, base, and where and how much of each part is in it. */
export const foodKey = ({ item, base, parts }: BuildChoice): string =>
  JSON.stringify([
    item,
    base,
    Object.entries(parts)
      .map(([component, { placement, portions }]) => [component, placement, portions] as const)
      .sort(([one], [other]) => (one < other ? -1 : 1)),
  ])
