/** The demo's line as an own one, in a school with four periods: its bells, and who is there by them. */
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'

const PERIODS = [
  ['p2', 'Period 2', '08:40', '09:30'],
  ['p3', 'Period 3', '09:34', '10:24'],
  ['p4', 'Period 4', '10:28', '11:18'],
  ['p5', 'Lunch', '11:20', '12:20'],
] as const

/** KT is certified; AB and CD are students. Nobody is there in the afternoon. */
const CREW = [
  ['KT', true],
  ['AB', false],
  ['CD', false],
] as const

export const SCHOOL: StationDocument = {
  ...demoStation,
  id: 'school-line',
  name: 'School line',
  day: {
    ...demoStation.day,
    doors: { open: '11:20', close: '12:20' },
    bells: [
      {
        id: 'usual',
        name: 'Usual',
        periods: PERIODS.map(([id, name, from, to]) => ({ id, name, from, to })),
      },
    ],
    crew: CREW.flatMap(([initials, certified]) =>
      PERIODS.map(([period]) => ({ bell: 'usual', period, initials, certified })),
    ),
  },
}
