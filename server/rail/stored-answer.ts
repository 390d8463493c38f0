import type { Answer } from '#lib/protocol/wire.ts'
import type { Refusal } from '#lib/service/refusal.ts'

/** An answer as it lies in the log beside its command's id. */
export type StoredAnswer =
  | { readonly answer: 'accepted'; readonly position: number }
  | { readonly answer: 'refused'; readonly refusal: Refusal }

export const answerFor = (id: string, stored: StoredAnswer): Answer => ({ id, ...stored })
