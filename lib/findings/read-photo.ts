import { z } from 'zod';
import { query } from '../access/service';
import { Refusal } from '../problems';

/** A stored photo of this operator's. */
export const readPhoto = query({
  verb: 'photo.read',
  input: z.object({ photoId: z.uuid() }),
  async run({ tx, operatorId }, { photoId }) {
    const photo = await tx.photo.findUnique({ where: { operatorId_id: { operatorId, id: photoId } } });
    if (!photo) throw new Refusal('not_found', { say: 'There is no such photo here.' });
    return { mime: photo.mime, sha256: photo.sha256, bytes: photo.bytes };
  },
});
