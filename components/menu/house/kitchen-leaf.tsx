import { About } from '#components/menu/fields/help.tsx'
import { fieldsWith } from '#components/menu/fields/typed.ts'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/house/kitchen.module.css'
import { ToolRows } from '#components/menu/house/tool-rows.tsx'
import { VesselRows } from '#components/menu/house/vessel-rows.tsx'
import menu from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { isRecord, type Json, textsIn } from '#lib/editor/draft.ts'
import { REHEATING_PLACES } from '#lib/safety/reheating.ts'
import { SANITIZERS } from '#lib/safety/sanitizer.ts'

const SAFETY = { entity: 'safety', id: 'safety' } as const

/** As often as hands and cloths meet it: common practice, no source. */
const USUAL_EVERY_MIN = 120

/** Where food is heated again: any of some places, a hot well not among them. */
function ReheatPlaces() {
  const { house: words } = useMenuWords()
  const { draft, take } = useMenu()
  const on = textsIn(draft.rows.safety, 'reheatOn')
  const places = REHEATING_PLACES.filter((place) => place !== 'hot-well')
  return (
    <About of="reheatOn">
      <fieldset className={menu.chips}>
        <legend>{words.reheatOn}</legend>
        {places.map((place) => (
          <button
            key={place}
            type="button"
            aria-pressed={on.includes(place)}
            onClick={() =>
              take({
                do: 'put',
                ...SAFETY,
                fields: {
                  reheatOn: places.filter((one) => (one === place) !== on.includes(one)),
                },
              })
            }
          >
            {words.reheatPlaces[place]}
          </button>
        ))}
      </fieldset>
    </About>
  )
}

/** What is read with a strip, how often, and what its container directs. */
function SanitizerFields() {
  const { house: words } = useMenuWords()
  const { draft, take } = useMenu()
  const row = draft.rows.safety
  const now = isRecord(row?.sanitizer) ? row.sanitizer : null
  const put = (path: string, value: Json | undefined) =>
    take({ do: 'put', ...SAFETY, ...fieldsWith(row, path, value) })
  const kind = SANITIZERS.find((one) => one === now?.kind)
  return (
    <About of="sanitizer">
      <div className={styles.part}>
        <Choice
          legend={words.sanitizer}
          ways={(['none', ...SANITIZERS] as const).map((id) => ({
            id,
            label: words.sanitizers[id],
          }))}
          chosen={kind ?? 'none'}
          onChoose={(id) =>
            // What another container directs is of no use to this one.
            put(
              'sanitizer',
              id === 'none'
                ? undefined
                : { everyMin: now?.everyMin ?? USUAL_EVERY_MIN, kind: id, label: null },
            )
          }
        />
        {now !== null && (
          <>
            <TypedField
              {...SAFETY}
              field="sanitizer.everyMin"
              as="whole"
              label={words.sanitizerEvery}
              help="sanitizer"
            />
            <fieldset className={styles.part}>
              <legend>{words.sanitizerLabel}</legend>
              {isRecord(now.label) ? (
                <>
                  <div className={styles.row}>
                    <TypedField
                      {...SAFETY}
                      field="sanitizer.label.leastMgPerL"
                      as="number"
                      label={words.least}
                      help="sanitizer"
                    />
                    <TypedField
                      {...SAFETY}
                      field="sanitizer.label.mostMgPerL"
                      as="number"
                      label={words.most}
                      help="sanitizer"
                    />
                  </div>
                  <TypedField
                    {...SAFETY}
                    field="sanitizer.label.mostPh"
                    as="number"
                    label={words.mostPh}
                    help="sanitizer"
                    isNullWhenEmpty
                  />
                  <Button kind="quiet" onClick={() => put('sanitizer.label', null)}>
                    {words.sanitizerNotRead}
                  </Button>
                </>
              ) : (
                <>
                  <p>{words.sanitizerUnread}</p>
                  <Button kind="quiet" onClick={() => put('sanitizer.label', { mostPh: null })}>
                    {words.sanitizerReadIn}
                  </Button>
                </>
              )}
            </fieldset>
          </>
        )}
      </div>
    </About>
  )
}

/** What the kitchen behind the line has: heat, a sanitizer, tools, pots and ovens. */
export function KitchenLeaf() {
  return (
    <div className={styles.kitchen}>
      <SanitizerFields />
      <ReheatPlaces />
      <VesselRows />
      <ToolRows />
    </div>
  )
}
