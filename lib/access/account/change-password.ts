import { fieldRefusal } from '../../problems';
import { said } from '../../words/said';
import { command } from '../service';
import { setPassword } from '../set-password';
import { changePasswordInput } from './schema';

/** Changes one's own password: the old one is asked, and every other session ends. */
export const changePassword = command({
  verb: 'password.change',
  asksPassword: true,
  input: changePasswordInput,
  counts: () => ({}),
  async run({ tx, operatorId, actor, now }, { password, newPassword }) {
    if (password === newPassword)
      throw fieldRefusal('newPassword', said('This is the password you have. Choose another.'));
    const { personId, session } = actor;
    await setPassword(tx, {
      operatorId,
      personId,
      password: newPassword,
      now,
      field: 'newPassword',
      ...(session && { keepSessionId: session.id }),
    });
    return { value: { changed: true }, audit: { subjectKind: 'person', subjectId: personId, detail: {} } };
  },
});
