/** Which services a station has: told to devices of the house, of the page that they are on. */
import {
  type CrewHere,
  plannedHere,
  type ServicesHere,
} from '#lib/rooms/day/views/services-here.ts'
import type { Access } from '#server/access/access.ts'
import { type AskHere, pageOf } from '#server/access/asked-page.ts'
import type { Houses } from '#server/houses/houses.ts'
import { askedPage } from '#server/http/asked-page.ts'
import { type Route, reads } from '#server/http/routes.ts'
import { sendJson } from '#server/http/sending.ts'
import { crewInitials } from '#server/rail/crew-initials.ts'

export const servicesRoute = (deps: {
  readonly houses: Pick<Houses, 'find'>
  readonly here: AskHere
  readonly access: Pick<Access, 'deviceOf'>
  readonly now: () => number
}): Route =>
  reads('/services', ({ request, response }) => {
    const device = deps.access.deviceOf(request)
    if (device === null) {
      sendJson(response, 401, { code: 'not-joined' })
      return
    }
    const page = pageOf(device, askedPage(request))
    const house = deps.houses.find(page.house)
    const { station } = deps.here(page, device.station)
    const document = station === null ? null : house?.stations.find(station)?.document
    if (!house || station === null || !document) {
      const none: ServicesHere = { station: null, followed: null, at: deps.now(), planned: [] }
      sendJson(response, 200, none)
      return
    }
    const { services } = house
    const rail = services.current(station)
    const answer: ServicesHere = {
      station: { id: station, timeZone: document.timeZone },
      followed: rail && { service: rail.service, isOpen: rail.state().stage === 'open' },
      at: deps.now(),
      planned: services
        .planned(station)
        .flatMap(({ service, state }) => plannedHere(service, state()) ?? []),
    }
    sendJson(response, 200, answer)
  })

/**
 * Who is there on a planned day, to the crew whose tasks are theirs: initials are in no event and in
 * nothing that the sockets send. A pick-up screen, which guests see, is told none.
 */
export const crewRoute = (deps: {
  readonly houses: Pick<Houses, 'find'>
  readonly access: Pick<Access, 'deviceOf'>
}): Route =>
  reads('/services/crew', async ({ request, response }) => {
    const device = deps.access.deviceOf(request)
    if (device === null) {
      sendJson(response, 401, { code: 'not-joined' })
      return
    }
    const asked = new URLSearchParams(request.url?.split('?')[1] ?? '').get('service')
    const house = deps.houses.find(pageOf(device, askedPage(request)).house)
    // One that opened goes on with its tasks.
    const rails = house ? [...house.services.planned(), ...house.services.currents()] : []
    const isHere = rails.some(({ service }) => service === asked)
    const isCrew = device.role !== 'pick-up'
    const names = house && asked && isHere && isCrew ? await crewInitials(house, asked) : {}
    const answer: CrewHere = { names }
    sendJson(response, 200, answer)
  })
