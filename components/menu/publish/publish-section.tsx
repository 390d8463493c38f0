import { Helped } from '#components/menu/fields/help.tsx'
import styles from '#components/menu/menu.module.css'
import { MissingLists } from '#components/menu/publish/missing-lists.tsx'
import { openIn } from '#components/menu/publish/open.ts'
import own from '#components/menu/publish/publish.module.css'
import { PublishForm } from '#components/menu/publish/publish-form.tsx'
import { Revisions } from '#components/menu/publish/revisions.tsx'
import { useCompared } from '#components/menu/publish/use-compared.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { Change } from '#lib/editor/change.ts'

const isOfTouch = (change: Change): boolean =>
  change.entity === 'contact' || (change.what === 'changed' && change.field === 'contactsSaid')

/** What is wrong, what is missing, what changes; publishing it; and the revisions of before. */
export function PublishSection() {
  const words = useMenuWords()
  const { draft, problems, missing, published, saw, goTo } = useMenu()
  const { wrong } = openIn(problems, missing)
  const changes = useCompared(draft.station, published, saw)
  return (
    <Panel
      className={styles.panel ?? ''}
      title={words.screen.sections.publish}
      label={words.screen.sections.publish}
    >
      <Helped>
        <div className={styles.leaf}>
          <div className={own.column}>
            {wrong.length > 0 && (
              <section aria-label={words.publish.wrong}>
                <h3>{words.publish.wrong}</h3>
                <ul className={own.list}>
                  {wrong.map((one) => (
                    <li key={`${one.code} ${one.entity} ${one.id} ${one.field}`}>
                      <button type="button" data-wrong="" onClick={() => goTo(one.entity, one.id)}>
                        <b>{words.rowNamed(draft, one.entity, one.id)}</b>{' '}
                        <span>{words.problem(draft, one)}</span>
                      </button>
                    </li>
                  ))}
                </ul>
              </section>
            )}
            <section aria-label={words.publish.changes}>
              <h3>{words.publish.changes}</h3>
              {published === null ? (
                <p>{words.publish.first}</p>
              ) : changes?.length === 0 ? (
                <p>{words.publish.none}</p>
              ) : (
                <ul className={own.plain}>
                  {changes?.map((change) => (
                    <li key={JSON.stringify(change)}>{words.change(change)}</li>
                  ))}
                </ul>
              )}
            </section>
            <PublishForm
              hasChanges={published === null || (changes?.length ?? 1) > 0}
              asksTouch={changes?.some(isOfTouch) ?? false}
            />
            <Revisions />
          </div>
          <div className={own.column}>
            <h3>{words.publish.missing}</h3>
            <MissingLists />
          </div>
        </div>
      </Helped>
    </Panel>
  )
}
