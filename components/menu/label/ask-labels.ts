/** What the label panel asks of the server. */
import { look, type Refused, tell } from '#components/access/ask.ts'
import type { MenuLabels, PhotoAnswer, SaveLabel, SaveLabelAnswer } from '#lib/editor/label-http.ts'

/** A picture of some megabytes goes over a school's Wi-Fi slowly. */
const PHOTO_PATIENCE_MS = 60_000

export const labelsOf = (station: string): Promise<MenuLabels | Refused> =>
  look<MenuLabels>(`/menu/labels?station=${encodeURIComponent(station)}`)

export const saveLabel = async (asked: SaveLabel): Promise<SaveLabelAnswer> =>
  (await tell('/menu/labels', asked)) as SaveLabelAnswer

/** Sends the picture as it is; what is kept is made anew there. Never throws. */
export const keepPhoto = async (file: File): Promise<PhotoAnswer> => {
  try {
    const response = await fetch('/menu/photos', {
      method: 'POST',
      headers: { 'content-type': file.type },
      body: file,
      cache: 'no-store',
      signal: AbortSignal.timeout(PHOTO_PATIENCE_MS),
    })
    return (await response.json()) as PhotoAnswer
  } catch {
    return { code: 'failed' }
  }
}

export const photoAt = (hash: string): string => `/menu/photos?hash=${hash}`
