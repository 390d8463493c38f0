/** The fields of what a guest ordered, and of what was accepted for them. */
import { each, type Fields, list } from '#lib/access/seen/classed.ts'
import type { BuildChoice, PartChoice } from '#lib/service/events/build-choice.ts'
import type { AcceptedBuild, AcceptedFinding } from '#lib/service/events/event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import type { Need } from '#lib/station/codes/codes.ts'

export const NEED: Fields<Need> = { code: 'needs', handling: 'needs', reason: ['reason', null] }

const PART: Fields<PartChoice> = { placement: 'always', portions: 'always', because: 'needs' }

export const CHOICE: Fields<BuildChoice> = {
  item: 'always',
  base: 'always',
  parts: each(PART),
  asked: 'needs',
  needs: list(NEED),
  agreed: 'needs',
  caution: 'needs',
}

export const ACCEPTED: Fields<AcceptedBuild> = {
  letter: 'always',
  choice: CHOICE,
  takes: each('always'),
  priceCents: ['money', 0],
}

export const FINDING: Fields<AcceptedFinding> = {
  component: 'needs',
  need: 'needs',
  why: 'needs',
  touches: 'needs',
  reached: list('needs'),
  states: each('needs'),
}

export const TAKING: Fields<Taking> = {
  pan: 'always',
  load: 'always',
  counted: 'always',
  amount: 'always',
  batches: list('always'),
}
