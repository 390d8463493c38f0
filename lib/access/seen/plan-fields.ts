/** The class of every field of what is planned. */
import { each, type Fields, list } from '#lib/access/seen/classed.ts'
import { PORTION, STATION } from '#lib/access/seen/station-fields.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

export const PLAN: Fields<ServicePlan> = {
  kind: 'always',
  on: 'always',
  doorsOpen: 'always',
  doorsClose: 'always',
  opensAt: 'always',
  closesAt: 'always',
  bells: 'always',
  guests: { walkIn: 'always', groups: list({ label: 'text', guests: 'always', at: 'always' }) },
  items: list('always'),
  crew: list({ id: 'always', adult: 'always', on: 'always', from: 'always', to: 'always' }),
}

const FOLLOWED = {
  revision: 'always',
  station: STATION,
  labels: each('always'),
  portions: each(PORTION),
} as const

export const PLANNED = {
  servicePlanned: { service: 'always', plan: PLAN, minuteOfDay: 'always', ...FOLLOWED },
  planChanged: { plan: PLAN, minuteOfDay: 'always' },
  planFollowed: FOLLOWED,
  planDropped: {},
} as const
