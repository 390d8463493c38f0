/** What a station reads beside its food. */
import type { StationDocument } from '#lib/station/station-document.ts'

export const READ_HERE = ['shelf', 'sanitizer'] as const

export type ReadHere = (typeof READ_HERE)[number]

/** Whether a document asks for it to be read. */
const ASKED: Readonly<Record<ReadHere, (safety: StationDocument['safety']) => boolean>> = {
  shelf: ({ shelf }) => shelf.held !== 'none',
  sanitizer: ({ sanitizer }) => sanitizer !== undefined,
}

export const readHere = ({ safety }: StationDocument): readonly ReadHere[] =>
  READ_HERE.filter((one) => ASKED[one](safety))

export const isReadHere = (of: string): of is ReadHere => READ_HERE.some((one) => one === of)
