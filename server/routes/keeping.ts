import { mkdir } from 'node:fs/promises';
import { isAbsolute } from 'node:path';
import { Router } from 'express';
import { diskWords } from '../backup/disk.ts';
import { backupPlanFormSchema, checkFormSchema } from '../schemas/keeping.ts';
import type { Services } from '../services.ts';
import { setBackupPlan } from '../store/backup-plan.ts';
import { onlyAtDesk } from './door.ts';
import { noSuch, RequestProblem, sent } from './problems.ts';

/** Backups, checks and restoring: at the desk, since they name folders of the machine and change all there is. */
export function keepingRoutes({
  db,
  home,
  keeping,
  queue,
  remeasuring,
}: Pick<Services, 'db' | 'home' | 'keeping' | 'queue' | 'remeasuring'>): Router {
  const routes = Router();
  routes.use(
    ['/keeping', '/keeping/{*rest}'],
    onlyAtDesk('Backups are made and restored at the desk. Open Rondure on the machine it runs on.'),
  );

  routes.get('/keeping', async (_request, response) => {
    response.json(await keeping.answer());
  });

  routes.put('/keeping/plan', async (request, response) => {
    const plan = sent(backupPlanFormSchema, request.body);
    if (plan.folder !== null) await requireFolder(plan.folder);
    setBackupPlan(db, plan);
    response.json(await keeping.answer());
  });

  routes.post('/keeping/backups', async (_request, response) => {
    begun(keeping.beginBackup());
    response.status(202).json(await keeping.answer());
  });

  routes.post('/keeping/check', async (request, response) => {
    const { of } = sent(checkFormSchema, request.body);
    if (of !== 'store') await requireBackup(of);
    begun(keeping.beginCheck(of));
    response.status(202).json(await keeping.answer());
  });

  routes.post('/keeping/backups/:name/restore', async (request, response) => {
    await requireBackup(request.params.name);
    begun(keeping.beginRestore(request.params.name));
    response.status(202).json(await keeping.answer());
  });

  routes.get('/keeping/remeasuring', (_request, response) => {
    response.json(remeasuring.answer());
  });

  routes.post('/keeping/remeasuring/start', (_request, response) => {
    remeasuring.begin();
    queue.wake();
    response.status(202).json(remeasuring.answer());
  });

  routes.post('/keeping/remeasuring/stop', (_request, response) => {
    remeasuring.stop();
    // The sitting that it was at may be joined now.
    queue.wake();
    response.json(remeasuring.answer());
  });

  /** Only a name that is on the list is ever joined to a path. */
  async function requireBackup(name: string): Promise<void> {
    const { backups } = await keeping.answer();
    if (!backups.some((backup) => backup.name === name)) throw noSuch('backup');
  }

  async function requireFolder(folder: string): Promise<void> {
    const refuse = (words: string) => new RequestProblem(422, words, [{ pointer: '/folder', detail: words }]);
    if (!isAbsolute(folder)) throw refuse('Give the whole path of the folder, from the top of the disk.');
    if ([home.photos, home.pictures, home.incoming].some((own) => `${folder}/`.startsWith(`${own}/`))) {
      throw refuse('Photos lie in this folder. Choose one of its own for the backups.');
    }
    await mkdir(folder, { recursive: true }).catch((fault: unknown) => {
      throw refuse(diskWords(fault, folder));
    });
  }

  return routes;
}

function begun(couldBegin: boolean): void {
  if (couldBegin) return;
  throw new RequestProblem(409, 'A backup, check or restore is under way. Wait until it is done.');
}
