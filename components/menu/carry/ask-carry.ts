/** What the screen of carrying asks of the server. */

import { type Encoded, MOST_SENT } from '#components/menu/carry/chosen-file.ts'
import type { TableOf } from '#lib/carry/csv/planned.ts'
import type { CarryAnswer, CsvLook, CsvTaken, Imported, ImportLook } from '#lib/carry/http.ts'

/** 20 MB go over a school's Wi-Fi slowly. */
const PATIENCE_MS = 60_000

export type Lost = { readonly code: 'lost' }

const query = (asked: Readonly<Record<string, string | number>>): string =>
  new URLSearchParams(
    Object.entries(asked).map(([name, value]) => [name, String(value)]),
  ).toString()

/** Never throws. */
const send = async <Done extends object>(
  path: string,
  file: Blob,
  type: string,
): Promise<CarryAnswer<Done> | Lost> => {
  const mostBytes = MOST_SENT[type] ?? 0
  if (file.size > mostBytes) return { code: 'wrong-file', problem: { why: 'too-large', mostBytes } }
  try {
    const answer = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': type },
      body: file,
      cache: 'no-store',
      signal: AbortSignal.timeout(PATIENCE_MS),
    })
    return (await answer.json()) as CarryAnswer<Done>
  } catch {
    return { code: 'lost' }
  }
}

export const lookAtStation = (file: Blob, into: string) =>
  send<ImportLook>(`/menu/import/look?${query({ into })}`, file, 'application/json')

export const takeStation = (file: Blob, into: string, saw: number) =>
  send<Imported>(`/menu/import?${query({ into, saw })}`, file, 'application/json')

export interface AskedTable {
  readonly station: string
  readonly what: TableOf
  readonly encoding: Encoded
}

export const lookAtTable = (file: Blob, { station, what, encoding }: AskedTable) =>
  send<CsvLook>(`/menu/csv/look?${query({ station, what, encoding })}`, file, 'text/csv')

export const takeTable = (file: Blob, { station, what, encoding }: AskedTable, saw: number) =>
  send<CsvTaken>(`/menu/csv?${query({ station, what, encoding, saw })}`, file, 'text/csv')

export interface Listed {
  readonly station: string
  readonly name: string
}

/** Stations of the house; none where it can't be told. */
export const stationsNow = async (): Promise<readonly Listed[]> => {
  try {
    const answer = await fetch('/menu/stations', { cache: 'no-store' })
    const { stations = [] } = (await answer.json()) as { readonly stations?: readonly Listed[] }
    return stations
  } catch {
    return []
  }
}
