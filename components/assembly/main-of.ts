import type { AssemblyWords } from '#components/assembly/words.tsx'
import type { AssemblyView } from '#lib/rooms/making/views/assembly.ts'

export type Main = { readonly kind: 'read' | 'start' | 'finish' | 'skip'; readonly words: string }

/** What the large button and the pedal do now; null where nothing goes on, or a person is asked. */
export const mainOf = (
  words: AssemblyWords,
  view: AssemblyView,
  read: string | null,
): Main | null => {
  const { now, next } = view
  if (!now || view.stopped || now.held || !now.checked) return null
  if (now.short) return next === null ? null : { kind: 'skip', words: words.skipTo(next) }
  const isUnread = now.keptApart && read !== now.reads
  if (now.elsewhere !== null) return isUnread ? { kind: 'read', words: words.wasRead } : null
  if (now.state === 'making') return { kind: 'finish', words: words.finish }
  return isUnread
    ? { kind: 'read', words: words.wasRead }
    : { kind: 'start', words: words.start(now.name) }
}
