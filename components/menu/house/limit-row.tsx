import { About } from '#components/menu/fields/help.tsx'
import { PickField } from '#components/menu/fields/pick-field.tsx'
import { fieldsWith, valueAt } from '#components/menu/fields/typed.ts'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import { LimitFigures } from '#components/menu/house/limit-figures.tsx'
import styles from '#components/menu/house/limits.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { begunLimit, typedBesideModel } from '#lib/editor/limits/own-limit.ts'
import { type LimitName, MODEL_CODE } from '#lib/safety/limits.ts'

const SAFETY = { entity: 'safety', id: 'safety' } as const

const NOTES = { looser: 'watch', stricter: 'plain', same: 'plain' } as const

/** One limit: the model code's with its paragraph, and what local code says instead with its own. */
export function LimitRow({ name }: { readonly name: LimitName }) {
  const { limits: words, ...all } = useMenuWords()
  const { draft, problems, take } = useMenu()
  const row = draft.rows.safety
  const field = `limits.${name}`
  const own = valueAt(row, field)
  const put = (value: ReturnType<typeof begunLimit> | undefined) =>
    take({ do: 'put', ...SAFETY, ...fieldsWith(row, field, value) })
  const beside = typedBesideModel(name, own)
  const refused = problems.find(
    (one) => one.entity === 'safety' && one.field === 'limits' && one.named?.includes(name),
  )
  return (
    <li data-own={own !== undefined || undefined}>
      <div className={styles.head}>
        <p>
          <b>{words.names[name]}</b>
          <span>{words.model(MODEL_CODE[name], row?.scale === 'C' ? 'C' : 'F')}</span>
        </p>
        {own === undefined ? (
          <Button
            kind="quiet"
            aria-label={words.differsIn(words.names[name])}
            onClick={() => put(begunLimit(name))}
          >
            {words.differs}
          </Button>
        ) : (
          <Button kind="quiet" onClick={() => put(undefined)}>
            {words.takeOwn}
          </Button>
        )}
      </div>
      {own !== undefined && (
        <>
          <fieldset className={styles.fields} aria-label={words.own(words.names[name])}>
            <LimitFigures name={name} />
            <TypedField
              {...SAFETY}
              field={`${field}.document`}
              label={words.document}
              help="limitSource"
            />
            <TypedField
              {...SAFETY}
              field={`${field}.paragraph`}
              label={words.paragraph}
              help="limitSource"
            />
            <PickField
              {...SAFETY}
              field={`${field}.certainty`}
              label={words.known}
              help="limitKnown"
              ways={(['seen', 'memory'] as const).map((id) => ({
                id,
                label: words.knownWays[id],
              }))}
            />
          </fieldset>
          {beside !== null && (
            <About of="limitKnown">
              <Note kind={refused ? 'no' : NOTES[beside]} role="status">
                {refused ? all.problem(draft, refused) : words.beside[beside]}
              </Note>
            </About>
          )}
        </>
      )}
    </li>
  )
}
