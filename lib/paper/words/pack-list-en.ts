/** The pack list on paper, in English. */
import { packEn } from '#lib/rooms/prep/words/pack-en.ts'

export const packListEn = {
  ...packEn,
  columns: { count: 'How many', what: 'What', rule: 'Why so many' },
  again: (group: string) => `… ${group}`,
  foot: `All that goes from the prep kitchen to the counter. Ticked on a tablet too: Prep, “Pack list”. ${packEn.common}`,
  packedBy: 'Packed by',
} as const
