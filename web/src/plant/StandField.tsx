import { useQuery } from '@tanstack/react-query';
import { standsQuery } from '../api/queries.ts';
import { Field } from '../parts/Field.tsx';

/** On which stand the plant is photographed; nothing while there is no stand to choose. */
export function StandField({
  standId,
  fault,
  onChoose,
}: {
  standId: string;
  fault: string | undefined;
  onChoose: (standId: string) => void;
}) {
  const { data: stands = [] } = useQuery(standsQuery);
  const offered = stands.filter((stand) => !stand.putAway || stand.id === standId);
  if (offered.length === 0) return null;
  return (
    <Field
      label="Stand"
      help="The place where it is photographed from now on. Photos already taken keep theirs."
      fault={fault}
    >
      {(wiring) => (
        <select {...wiring} value={standId} onChange={(event) => onChoose(event.target.value)}>
          <option value="">Without a stand</option>
          {offered.map((stand) => (
            <option key={stand.id} value={stand.id}>
              {stand.name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
