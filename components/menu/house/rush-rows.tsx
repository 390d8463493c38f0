import fields from '#components/menu/fields/fields.module.css'
import { About } from '#components/menu/fields/help.tsx'
import styles from '#components/menu/house/kitchen.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { type Row, recordsIn, textIn } from '#lib/editor/draft.ts'

/** When guests come all at once. */
export function RushRows() {
  const words = useMenuWords()
  const { draft, problems, take } = useMenu()
  const rushes = recordsIn(draft.rows.day, 'rushes')
  const put = (next: readonly Row[]) =>
    take({ do: 'put', entity: 'day', id: 'day', fields: { rushes: next } })
  const wrong = problems.find(
    ({ entity, field, code }) =>
      entity === 'day' && field?.startsWith('rushes') === true && code !== 'wrong-form',
  )
  return (
    <div className={styles.wide}>
      <About of="rushes">
        <fieldset className={styles.part}>
          <legend>{words.house.rushes}</legend>
          <div className={styles.list}>
            {rushes.map((rush, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a rush has no name but its place
              <div key={at} className={styles.row}>
                {(['from', 'to'] as const).map((end) => (
                  <Field
                    key={end}
                    label={words.house[end]}
                    type="time"
                    value={textIn(rush, end)}
                    onChange={({ target }) =>
                      put(
                        rushes.map((one, which) =>
                          which === at ? { ...one, [end]: target.value } : one,
                        ),
                      )
                    }
                  />
                ))}
                <Button
                  kind="quiet"
                  aria-label={words.house.takeRush}
                  onClick={() => put(rushes.filter((_, which) => which !== at))}
                >
                  ×
                </Button>
              </div>
            ))}
          </div>
          {wrong && (
            <p role="alert" className={fields.problem}>
              {words.problem(draft, wrong)}
            </p>
          )}
          <Button
            kind="quiet"
            onClick={() => put([...rushes, { from: textIn(rushes.at(-1), 'to'), to: '' }])}
          >
            {words.house.addRush}
          </Button>
        </fieldset>
      </About>
    </div>
  )
}
