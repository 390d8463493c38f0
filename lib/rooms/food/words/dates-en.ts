/** What is asked and said about the days of food: opened or made on, use-by, frozen. */
import type { DayLimit } from '#lib/safety/limits.ts'

export const dateWords = {
  /** On the button that opens the questions. */
  ask: {
    opened: 'Opened on, use-by, frozen?',
    made: 'Made on, use-by, frozen?',
  },
  notSaid: 'Not said: use by midnight',
  packNotSaid: 'Not said yet: it isn’t loaded without',
  change: (day: string) => `Use by ${day} · change it`,
  title: 'Its date',
  firstDay: { opened: 'Opened on', made: 'Made on' },
  firstDayHow: {
    opened: '',
    made: 'Made of several? The earliest day counts.',
  },
  today: 'Today',
  yesterday: 'Yesterday',
  useBy: 'Maker’s use-by',
  useByHow: {
    opened: 'If the pack has one.',
    made: 'If a pack that went in has one: the earliest.',
  },
  frozen: 'Was it frozen?',
  frozenOn: 'Into the freezer on',
  thawedOn: 'Out of the freezer on',
  lack: {
    preparedOn: {
      opened: 'Say when it was opened: without that it isn’t loaded.',
      made: 'Say when it was made: without that it is used by midnight.',
    },
    frozenOn: 'Say when it went into the freezer.',
    thawedOn: 'Say when it came out of the freezer.',
  },
  lastUse: (day: string) => `Use by ${day}`,
  /** Beside the other facts of a pan. */
  onPan: (day: string) => `use by ${day}`,
  onPanUndated: 'use by midnight',
  limit: ({ days }: DayLimit, cold: string) =>
    `At most ${days} days at ${cold}: the day it was opened or made is day 1. Days in the freezer don’t count. A use-by that is earlier holds.`,
  send: 'That is its date',
  none: 'No date: use by midnight',
  noneOfPack: 'Not said yet',
  noneOfBatch: 'Nothing to say of its date',
} as const
