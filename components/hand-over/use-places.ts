import { useState, useSyncExternalStore } from 'react'
import { type Places, settle, type Together } from '#lib/rooms/shelf/views/places.ts'

/** Places on a board of a tablet, and on a phone's. */
export const COLUMNS = 5
const COLUMNS_ON_A_PHONE = 3
/** Beside what comes before all else the boards are shorter. */
const COLUMNS_BESIDE = 3

const PHONE = '(max-width: 700px)'

const watchWidth = (changed: () => void) => {
  const media = matchMedia(PHONE)
  media.addEventListener('change', changed)
  return () => media.removeEventListener('change', changed)
}

/** Where everything stands; it keeps its place as long as this screen is open. */
export const usePlaces = (
  stands: readonly Together[],
  isBeside: boolean,
): { readonly places: Places; readonly columns: number; readonly isPhone: boolean } => {
  const isPhone = useSyncExternalStore(watchWidth, () => matchMedia(PHONE).matches)
  const columns = isPhone ? COLUMNS_ON_A_PHONE : isBeside ? COLUMNS_BESIDE : COLUMNS
  const [kept, setKept] = useState<{ places: Places; columns: number; of: string }>({
    places: {},
    columns,
    of: '',
  })
  const of = JSON.stringify([columns, stands.map(({ names, atEnd }) => [names, atEnd])])
  if (kept.of === of) return { ...kept, isPhone }
  const places = settle(kept.columns === columns ? kept.places : {}, stands, columns)
  const now = { places, columns, of }
  setKept(now)
  return { ...now, isPhone }
}
