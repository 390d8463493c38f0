/** What is told of a page: of which house and station it is, and which there are. */
import { lineDrawn } from '#lib/access/line-drawn.ts'
import { serviceOf } from '#lib/access/rights.ts'
import type { AskHere } from '#server/access/asked-page.ts'
import type { Houses } from '#server/houses/houses.ts'
import type { OpenHouse } from '#server/houses/open-house.ts'

/** The demo has one; of the own ones that which is asked for, else the device's, else the first. */
const stationFor = (
  { stations }: OpenHouse,
  asked: string | undefined,
  device: string | null,
): string | null =>
  [asked, device].find((id) => id !== undefined && id !== null && stations.find(id) !== null) ??
  stations.first()?.station ??
  null

const isDemo = ({ services }: OpenHouse, station: string | null): boolean => {
  const rail = station === null ? null : services.current(station)
  return rail !== null && serviceOf(rail.state())?.kind === 'demo'
}

export const createHere =
  (houses: Houses): AskHere =>
  (page, deviceAt) => {
    const which = houses.which(page.house)
    const house = houses.find(page.house)
    const station = house && stationFor(house, page.station, deviceAt)
    const document = station === null ? null : house?.stations.find(station)?.document
    const { services, stations } = houses.own
    return {
      page: which,
      demoIsOpen: houses.demo() !== null,
      line: document ? lineDrawn(document) : null,
      station,
      stations: stations.all().map((one) => ({
        id: one.station,
        isOpen: services.current(one.station)?.state().stage === 'open',
        ...lineDrawn(one.document),
      })),
      isDemo: house !== null && (which === 'demo' || isDemo(house, station)),
    }
  }
