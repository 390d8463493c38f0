import type { EndAmount } from '#components/food/use-end-amount.ts'
import job from '#components/job/job.module.css'
import { InitialsField } from '#components/job/proof-fields.tsx'
import pad from '#components/job/reading-pad.module.css'
import { PadDisplay } from '#components/job/reading-pad.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Initials } from '#components/job/use-proof.ts'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { SCALE_UNITS } from '#lib/rooms/pans/views/weight-entry.ts'

/** Who says what food comes to, and what its pan weighs where it is weighed. */
export function EndSide({
  much,
  isTyped,
  initials,
}: {
  readonly much: EndAmount
  readonly isTyped: boolean
  readonly initials: Initials
}) {
  const words = useFoodWords()
  return (
    <div className={job.what}>
      {isTyped && (
        <section data-pad="" className={pad.reading} aria-label={words.forms.byWeight}>
          <PadDisplay text={much.text} unit={words.forms.unit[much.unit]} />
          <NumberPad
            words={words.readings}
            text={much.text}
            decimals={3}
            onChange={much.setText}
            side={SCALE_UNITS.map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={much.unit === one}
                onClick={() => much.setUnit(one)}
              >
                {words.forms.unit[one]}
              </button>
            ))}
          />
        </section>
      )}
      <InitialsField initials={initials} />
    </div>
  )
}
