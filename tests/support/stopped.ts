/** Builds that are stopped while they are made, and the answer to what was in them. */
import {
  at,
  choose,
  type Given,
  given,
  needs,
  onward,
  ready,
  send,
} from '#tests/support/service.ts'

const start: Given = { type: 'start', ...at('1A'), read: true }

export const onTheSide = choose('garden-chicken', { 'yogurt-sauce': 'side' })

const milkApart = choose(
  'bean-and-pepper',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
  needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
)

export const stopped = {
  /** Cancelled; its sauce is on the side. */
  onTheSide: given(send(onTheSide), start, { type: 'cancel', ...at('1A') }),
  /** Kept apart, with a wrong scoop in one of its pans. */
  apart: onward(ready(send(milkApart)), start, {
    type: 'soilPan',
    pan: 'pan-beans',
    by: 'cheddar',
  }),
} as const

/** These components were in it. */
export const inIt = (...components: readonly string[]): Given => ({
  type: 'acknowledge',
  ...at('1A'),
  foodInIt: true,
  inIt: [...components],
})
