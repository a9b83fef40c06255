import { command } from '../service';
import { ownSettingsInput } from './schema';

/** Language and units of one person's screens. Null: as the browser and the operator have it. */
export const changeOwnSettings = command({
  verb: 'own-settings.change',
  input: ownSettingsInput,
  async run({ tx, operatorId, actor }, { language, units }) {
    await tx.person.updateMany({ where: { operatorId, id: actor.personId }, data: { language, units } });
    return {
      value: { language, units },
      audit: { subjectKind: 'person', subjectId: actor.personId, detail: { language, units } },
    };
  },
});
