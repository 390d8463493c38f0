import { About } from '#components/menu/fields/help.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/house/kitchen.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { type Row, recordsIn, textIn } from '#lib/editor/draft.ts'
import { fitsTyped } from '#lib/recipes/wanted.ts'

/** An id that none of them has. */
const nextId = (vessels: readonly Row[]): string => {
  const taken = new Set(vessels.map((one) => one.id))
  let number = vessels.length + 1
  while (taken.has(`vessel-${number}`)) number += 1
  return `vessel-${number}`
}

/** Pots, griddles and ovens, and what goes into each at once: recipes are split into batches by it. */
export function VesselRows() {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const vessels = recordsIn(draft.rows.house, 'vessels')
  const put = (next: readonly Row[]) =>
    take({ do: 'put', entity: 'house', id: 'house', fields: { vessels: next } })
  const say = (at: number, fields: Row) =>
    put(vessels.map((one, place) => (place === at ? { ...one, ...fields } : one)))
  return (
    <div className={styles.wide}>
      <About of="vessels">
        <fieldset className={styles.part}>
          <legend>{words.house.vessels}</legend>
          {vessels.map((one, at) => {
            const holds = textIn(one, 'holds')
            const read = holds.trim() === '' ? null : fitsTyped(holds)
            return (
              <div key={textIn(one, 'id')} className={`${styles.row} ${styles.tool}`}>
                {(['name', 'holds'] as const).map((field) => (
                  <TypedField
                    key={field}
                    entity="house"
                    id="house"
                    field={`vessels.${at}.${field}`}
                    label={words.house.vessel[field]}
                    help="vessels"
                    onAnswer={(value) =>
                      say(at, { [field]: typeof value === 'string' ? value : '' })
                    }
                  />
                ))}
                <Button
                  kind="quiet"
                  aria-label={words.house.takeTool(textIn(one, 'name'))}
                  onClick={() => put(vessels.filter((_, place) => place !== at))}
                >
                  ×
                </Button>
                {read?.ok === false && (
                  <p role="alert" className={styles.wrong}>
                    {words.amountProblem(read)}
                  </p>
                )}
              </div>
            )
          })}
          <Button
            kind="quiet"
            onClick={() => put([...vessels, { id: nextId(vessels), name: '', holds: '' }])}
          >
            {words.house.addVessel}
          </Button>
        </fieldset>
      </About>
    </div>
  )
}
