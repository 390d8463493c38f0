import { About } from '#components/menu/fields/help.tsx'
import { CheckField } from '#components/menu/fields/pick-field.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/pan/again.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { isRecord, type Json, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'

/** What making it again begins with; where and by whom is typed. */
const FIRST_REMAKE = { minutes: 20, minutesPerLoad: 5, portionsPerLoad: 12, mostLoads: 2 }

/** How it is made again during a service, and what its food may be put through. */
export function AgainLeaf({ component }: { readonly component: string }) {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const row = rowOf(draft, 'component', component)
  const put = (field: string, value: Json) =>
    take({ do: 'put', entity: 'component', id: component, fields: { [field]: value } })
  const of = { entity: 'component' as const, id: component }
  const at = rowsOf(draft, 'pan').find((one) => textIn(one.row, 'component') === component)
  const well = at && textIn(rowOf(draft, 'well', textIn(at.row, 'well')), 'held')
  const canBe = row?.remake === undefined ? null : isRecord(row.remake) ? 'yes' : 'no'
  return (
    <div className={styles.leaf}>
      <section className={styles.part}>
        <About of="remake">
          <Choice
            legend={words.pan.again}
            ways={[
              { id: 'yes', label: words.pan.canBe },
              { id: 'no', label: words.pan.cannotBe },
            ]}
            chosen={canBe}
            onChoose={(id) => put('remake', id === 'yes' ? FIRST_REMAKE : null)}
          />
        </About>
        {canBe === 'yes' && (
          <div className={styles.fields}>
            <TypedField {...of} field="remake.where" label={words.pan.where} help="remake" />
            <TypedField {...of} field="remake.by" label={words.pan.by} help="remake" />
            <TypedField
              {...of}
              field="remake.minutes"
              as="number"
              label={words.pan.minutes}
              help="remake"
            />
            <TypedField
              {...of}
              field="remake.portionsPerLoad"
              as="whole"
              label={words.pan.portionsPerLoad}
              help="perLoad"
            />
            <TypedField
              {...of}
              field="remake.minutesPerLoad"
              as="number"
              label={words.pan.perLoad}
              help="perLoad"
            />
            <TypedField
              {...of}
              field="remake.mostLoads"
              as="whole"
              label={words.pan.mostLoads}
              help="perLoad"
            />
          </div>
        )}
      </section>
      <section className={styles.part}>
        <CheckField
          {...of}
          field="food.reheatable"
          label={words.pan.reheatable}
          help="reheatable"
        />
        <CheckField {...of} field="food.roast" label={words.pan.roast} help="roast" />
        {(well === 'hot' || well === 'cold') && (
          <About of="dryHere">
            <label className={styles.check}>
              <input
                type="checkbox"
                checked={row?.held === 'dry'}
                onChange={({ target }) => put('held', target.checked ? 'dry' : well)}
              />
              {words.pan.dryHere(well)}
            </label>
          </About>
        )}
        <About of="cookedIn">
          <label className={styles.check}>
            <input
              type="checkbox"
              checked={isRecord(row?.food) && row.food.cookedIn === 'microwave'}
              onChange={({ target }) =>
                put('food', {
                  ...(isRecord(row?.food) ? row.food : {}),
                  cookedIn: target.checked ? 'microwave' : 'usual',
                })
              }
            />
            {words.pan.cookedIn}
          </label>
        </About>
        <About of="warm">
          <label className={styles.check}>
            <input
              type="checkbox"
              checked={isRecord(row?.warm)}
              onChange={({ target }) => put('warm', target.checked ? { seconds: 15 } : null)}
            />
            {words.pan.warm}
          </label>
        </About>
        {isRecord(row?.warm) && (
          <div className={styles.fields}>
            <TypedField
              {...of}
              field="warm.seconds"
              as="whole"
              label={words.pan.warmSeconds}
              help="warm"
            />
            <TypedField {...of} field="warm.on" label={words.pan.warmOn} help="warm" />
          </div>
        )}
      </section>
    </div>
  )
}
