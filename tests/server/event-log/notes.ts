import type { EventLog, LogEntry } from '#server/event-log/port.ts'

export interface NoteEntry extends LogEntry {
  readonly note: string
}

export type NoteAnswer = { readonly ok: boolean; readonly position: number }

export type NoteLog = EventLog<NoteEntry, NoteAnswer>

export const noteEntry = (position: number, note = `note ${position}`): NoteEntry => ({
  position,
  at: 1_000 + position,
  command: `command-${position}`,
  type: 'noted',
  note,
})

export const noteEntries = (from: number, to: number, note?: string): readonly NoteEntry[] =>
  Array.from({ length: to - from + 1 }, (_, index) => noteEntry(from + index, note))

export const noteAnswer = (command: string, position = 1, fingerprint = `print of ${command}`) => ({
  command,
  fingerprint,
  answer: { ok: true, position },
})
