import styles from '#components/plan/day-form.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import type { GroupEntry } from '#lib/rooms/prep/views/plan-entry.ts'

/** Groups of guests who are known to come, each by a name that is nobody's. */
export function GroupRows({
  groups,
  onGroups,
}: {
  readonly groups: readonly GroupEntry[]
  readonly onGroups: (groups: readonly GroupEntry[]) => void
}) {
  const { form } = usePlanWords()
  const set = (index: number, part: Partial<GroupEntry>) =>
    onGroups(groups.map((one, at) => (at === index ? { ...one, ...part } : one)))
  return (
    <fieldset className={styles.rows}>
      <legend>{form.groups}</legend>
      {groups.map((group, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has nothing else of its own yet
        <div key={index} className={styles.row}>
          <Field
            label={form.groupLabel}
            maxLength={40}
            value={group.label}
            onChange={(event) => set(index, { label: event.target.value })}
          />
          <Field
            label={form.groupGuests}
            inputMode="numeric"
            maxLength={5}
            value={group.guests}
            onChange={(event) => set(index, { guests: event.target.value })}
          />
          <Field
            label={form.groupAt}
            type="time"
            value={group.at}
            onChange={(event) => set(index, { at: event.target.value })}
          />
          <Button kind="quiet" onClick={() => onGroups(groups.filter((_, at) => at !== index))}>
            {form.remove}
          </Button>
        </div>
      ))}
      <Button kind="quiet" onClick={() => onGroups([...groups, { label: '', guests: '', at: '' }])}>
        {form.addGroup}
      </Button>
    </fieldset>
  )
}
