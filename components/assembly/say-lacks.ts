import type { NowBuild } from '#lib/views/assembly.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'

/** Why a build can't be made now, and whom to tell. */
export const sayLacks = ({ name, lacks, lacksWhy, state }: NowBuild): string => {
  if (lacks === null) return ''
  if (lacksWhy === 'throw-out') return say.pastTime(name, lacks)
  if (lacksWhy === 'clock') return say.clock(name, lacks, state)
  return lacksWhy === 'off-sale' ? say.offSale(name, lacks, state) : say.short(name, lacks)
}
