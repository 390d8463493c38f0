import type { AssemblyView } from '#lib/views/assembly.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'

type Main = { readonly kind: 'read' | 'start' | 'finish' | 'skip'; readonly words: string }

/** What the large button does now; null where nothing goes on. */
export const mainOf = (view: AssemblyView, read: string | null): Main | null => {
  const { now, next } = view
  if (!now || view.stopped || now.held || !now.checked) return null
  if (now.short) return next === null ? null : { kind: 'skip', words: say.skipTo(next) }
  if (now.state === 'making') return { kind: 'finish', words: say.finish }
  return now.keptApart && read !== now.reads
    ? { kind: 'read', words: say.wasRead }
    : { kind: 'start', words: say.start(now.name) }
}
