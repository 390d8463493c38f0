import type { Component, Item, Pan, StationDocument } from '#lib/station/station-document.ts'

export const findComponent = (station: StationDocument, id: string): Component | undefined =>
  station.components.find((one) => one.id === id)

export const findItem = (station: StationDocument, id: string): Item | undefined =>
  station.items.find((one) => one.id === id)

const pansByStation = new WeakMap<StationDocument, readonly Pan[]>()

/** Every pan of the line, left to right. Asked so often that it is kept for each document. */
export const pansOf = (station: StationDocument): readonly Pan[] => {
  const known = pansByStation.get(station)
  if (known) return known
  const pans = station.line.wells.flatMap((well) => well.pans)
  pansByStation.set(station, pans)
  return pans
}

export const findPan = (station: StationDocument, id: string): Pan | undefined =>
  pansOf(station).find((one) => one.id === id)

/** Pans of the line that hold a component, left to right. */
export const linePansOf = (station: StationDocument, component: string): readonly Pan[] =>
  pansOf(station).filter((one) => one.component === component)

/** A component that the document is known to have. @throws where it does not: a programming fault. */
export const componentOf = (station: StationDocument, id: string): Component => {
  const found = findComponent(station, id)
  if (!found) throw new Error(`the station has no component ${id}`)
  return found
}

/** An item that the document is known to have. @throws where it does not: a programming fault. */
export const itemOf = (station: StationDocument, id: string): Item => {
  const found = findItem(station, id)
  if (!found) throw new Error(`the station has no item ${id}`)
  return found
}
