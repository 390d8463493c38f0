/** Sentences for what isn't done with food of the larder. */
import type { LotBound } from '#lib/larder/lot.ts'
import type { LotProblem, TakeProblem } from '#lib/larder/take.ts'

const BOUND: Readonly<Record<LotBound, string>> = {
  date: 'It is past its last day: throw it out, with initials.',
  'cooling-missed':
    'It didn’t cool in time, or nobody read that it did: throw it out, with initials.',
  'out-of-limits': 'It was read too warm: throw it out, with initials.',
}

const HOW = {
  taken: 'It was taken into a service',
  'thrown-out': 'It was thrown out',
  'another-class': 'Another class took it',
} as const

export const sayLotProblem = (
  problem: LotProblem | TakeProblem,
  clock: (at: number) => string,
  name: (id: string) => string,
  amount: (much: number, unit: 'mg' | 'piece') => string,
): string => {
  switch (problem.code) {
    case 'no-such-lot':
      return 'There is no such food in the larder. Look again.'
    case 'lot-gone':
      return `${HOW[problem.how]} at ${clock(problem.at)}: it isn’t there any more. Take another.`
    case 'lot-bound':
      return BOUND[problem.why]
    case 'lot-unread':
      return `Nobody has read it since ${clock(problem.since)}: read it first.`
    case 'lot-no-days-left':
      return 'None of its days is left: throw it out, with initials.'
    case 'lot-holds-less':
      return `There isn’t that much of it: ${amount(problem.left, problem.unit)} is left. Take that, or less.`
    case 'older-lot':
      return 'An older one is there: take that first, or say why not.'
    case 'larder-clock-unsure':
      return 'The laptop’s clock jumped: say on the Larder screen whether it is right, then take it.'
    case 'made-otherwise':
      return 'This station makes it of something else, so what is in it isn’t known here. Take it where it was made.'
    case 'label-changed':
      return `The label of ${name(problem.ingredient)} was changed since it was set aside, so what is in it isn’t known here. On the Larder screen the person in charge says which pack it was made of; else throw it out.`
    case 'stood-open-elsewhere':
      return 'It was open on another station’s line: what touched it there isn’t known here.'
    case 'touched-unknown':
      return 'What touched it where it was made isn’t known here. Take it where it was made; else throw it out.'
  }
}
