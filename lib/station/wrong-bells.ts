/** What is wrong with the times of a document's day: rushes, doors, bells, and who is there when. */

import { type DocumentProblem, twice, wrong } from '#lib/station/document-problem.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'

type Day = StationShape['day']
type Bell = NonNullable<Day['bells']>[number]

/** Times of day are compared as they are written: each is two digits, a colon and two digits. */
const isBackwards = ({ from, to }: { readonly from: string; readonly to: string }): boolean =>
  from >= to

const wrongTimes = ({ rushes, doors }: Day): readonly DocumentProblem[] => [
  ...rushes
    .filter(isBackwards)
    .map(({ from, to }) =>
      wrong(
        'rush-backwards',
        ['house', null, 'rushes'],
        `a rush from ${from} ends at ${to}: say them the other way round`,
        from,
        to,
      ),
    ),
  ...(doors !== undefined && doors.open >= doors.close
    ? [
        wrong(
          'doors-backwards',
          ['house', null, 'doors'],
          `doors open at ${doors.open} and close at ${doors.close}: say them the other way round`,
          doors.open,
          doors.close,
        ),
      ]
    : []),
]

/** One period may begin when another ends. */
const wrongPeriods = ({ id, periods }: Bell): readonly DocumentProblem[] => {
  const at = ['house', null, 'bells'] as const
  const double = twice(periods.map((one) => one.id))
  const inOrder = [...periods].sort((one, other) => one.from.localeCompare(other.from))
  return [
    ...(double === undefined
      ? []
      : [wrong('twice-the-id', at, `two periods of ${id} are called ${double}`, id, double)]),
    ...periods
      .filter(isBackwards)
      .map(({ id: period, from, to }) =>
        wrong(
          'period-backwards',
          at,
          `period ${period} of ${id} is from ${from} to ${to}: say them the other way round`,
          id,
          period,
        ),
      ),
    ...inOrder.flatMap((period, index) => {
      const next = inOrder[index + 1]
      return next !== undefined && next.from < period.to
        ? [
            wrong(
              'periods-overlap',
              at,
              `periods ${period.id} and ${next.id} of ${id} overlap: end one before the other begins`,
              id,
              period.id,
              next.id,
            ),
          ]
        : []
    }),
  ]
}

/** A person is told by initials alone, so that two of one period have others. */
const wrongCrew = ({ bells = [], crew = [] }: Day): readonly DocumentProblem[] => {
  const at = ['house', null, 'crew'] as const
  const unknown = crew.flatMap(({ bell, period, initials }) => {
    const found = bells.find((one) => one.id === bell)
    if (!found)
      return [wrong('no-such-bell', at, `${initials} is there on no known bell ${bell}`, bell)]
    return found.periods.some((one) => one.id === period)
      ? []
      : [
          wrong(
            'no-such-period',
            at,
            `${initials} is there in no known period ${period} of ${bell}`,
            bell,
            period,
          ),
        ]
  })
  const there = crew.map((one) => `${one.bell}/${one.period}/${one.initials.toUpperCase()}`)
  const double = crew[there.indexOf(twice(there) ?? '')]
  return [
    ...unknown,
    ...(double === undefined
      ? []
      : [
          wrong(
            'initials-twice',
            at,
            `two are called ${double.initials} in period ${double.period} of ${double.bell}: add a letter to one`,
            double.bell,
            double.period,
            double.initials,
          ),
        ]),
  ]
}

export const wrongBells = ({ day }: StationShape): readonly DocumentProblem[] => {
  const bells = day.bells ?? []
  const double = twice(bells.map((one) => one.id))
  return [
    ...wrongTimes(day),
    ...(double === undefined
      ? []
      : [
          wrong('twice-the-id', ['house', null, 'bells'], `two bells are called ${double}`, double),
        ]),
    ...bells.flatMap(wrongPeriods),
    ...wrongCrew(day),
  ]
}
