import type { EndAmount } from '#components/food/use-end-amount.ts'
import pad from '#components/job/reading-pad.module.css'
import { PadDisplay } from '#components/job/reading-pad.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { SCALE_UNITS } from '#lib/rooms/pans/views/weight-entry.ts'

/** What a pan weighs with its food as that comes to its end. */
export function WeightPad({ much }: { readonly much: EndAmount }) {
  const words = useFoodWords()
  const { text, setText, unit, setUnit } = much
  return (
    <section data-pad="" className={pad.reading} aria-label={words.forms.byWeight}>
      <PadDisplay text={text} unit={words.forms.unit[unit]} />
      <NumberPad
        words={words.readings}
        text={text}
        decimals={3}
        onChange={setText}
        side={SCALE_UNITS.map((one) => (
          <button key={one} type="button" aria-pressed={unit === one} onClick={() => setUnit(one)}>
            {words.forms.unit[one]}
          </button>
        ))}
      />
    </section>
  )
}
