/** What is done with a pan first: one way, told the same on the line of a phone and in its panel. */
import type { Chosen } from '#components/job/chosen.ts'
import type { PansWords } from '#components/pans/words.tsx'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'

export const mainOf = (
  words: PansWords,
  { pan, component, trouble, amount, selling }: PanPicture,
): { readonly label: string; readonly opens: Chosen } => {
  switch (trouble) {
    case 'throw-out':
      return { label: words.toThrowOut, opens: { task: 'throw-out', early: null } }
    case 'off-sale':
      return { label: words.whatMayBeDone, opens: { task: 'resolve', what: 'pan', id: pan } }
    case 'unread':
      return { label: words.readTemperature, opens: { task: 'read', what: 'pan', id: pan } }
    default:
      if (!selling)
        return {
          label: words.resumeSelling,
          opens: { task: 'selling', what: 'component', id: component },
        }
      return amount === 0
        ? { label: words.loadPan, opens: { task: 'put', pan, way: 'load' } }
        : { label: words.changePan, opens: { task: 'put', pan, way: 'change' } }
  }
}
