import type { AssemblyWords } from '#components/assembly/words.tsx'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'

/** Why a build can't be made now, and whom to tell. */
export const sayLacks = (
  words: AssemblyWords,
  { name, lacks, lacksWhy, state }: NowBuild,
): string => {
  if (lacks === null) return ''
  if (lacksWhy === 'throw-out') return words.pastTime(name, lacks)
  if (lacksWhy === 'clock') return words.clock(name, lacks, state)
  return lacksWhy === 'off-sale' ? words.dontServe(name, lacks, state) : words.short(name, lacks)
}
