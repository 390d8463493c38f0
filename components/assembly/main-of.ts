import type { AssemblyWords } from '#components/assembly/words.tsx'
import type { AssemblyView } from '#lib/rooms/making/views/assembly.ts'

type Main = { readonly kind: 'read' | 'start' | 'finish' | 'skip'; readonly words: string }

/** What the large button does now; null where nothing goes on. */
export const mainOf = (
  words: AssemblyWords,
  view: AssemblyView,
  read: string | null,
): Main | null => {
  const { now, next } = view
  if (!now || view.stopped || now.held || !now.checked) return null
  if (now.short) return next === null ? null : { kind: 'skip', words: words.skipTo(next) }
  if (now.state === 'making') return { kind: 'finish', words: words.finish }
  return now.keptApart && read !== now.reads
    ? { kind: 'read', words: words.wasRead }
    : { kind: 'start', words: words.start(now.name) }
}
