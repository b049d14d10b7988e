import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { OutputOf } from '../../core/contract/call.ts';
import { contract } from '../../core/contract/index.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';

export type BackupsFound = OutputOf<typeof contract.backupsRead>;
export type BackupFound = BackupsFound['backups'][number];
export type RowAside = OutputOf<typeof contract.asideRead>[number];

/** The backups of the data file, newest first, and what keeps one from being made. Read anew whenever they are shown. */
export const useBackups = () =>
  useQuery({
    queryKey: keys.backups,
    queryFn: () => invoke(contract.backupsRead, {}),
    refetchOnMount: 'always',
  });

/** What one backup holds. */
export const useBackupContent = (name: string) =>
  useQuery({
    queryKey: [...keys.backups, name],
    queryFn: () => invoke(contract.backupsPreview, { name }),
    retry: false,
  });

/** Rows that could not be read, newest first. */
export const useAside = () =>
  useQuery({ queryKey: keys.aside, queryFn: () => invoke(contract.asideRead, {}) });

const useAsideChange = (change: typeof contract.asidePutBack | typeof contract.asideRemove) => {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (id: number) => invoke(change, { id }),
    onSuccess: () => client.invalidateQueries({ queryKey: keys.aside }),
  });
};
/** Put a row back into the shop, or remove it for good. */
export const usePutBack = () => useAsideChange(contract.asidePutBack);
export const useRemoveAside = () => useAsideChange(contract.asideRemove);

export function useMakeBackup() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: () => invoke(contract.backupsMake, {}),
    onSettled: () => client.invalidateQueries({ queryKey: keys.backups }),
  });
}

/** Go on with a backup; then everything is read again. */
export function useRestore() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (name: string) => invoke(contract.backupsRestore, { name }),
    onSuccess: () => client.invalidateQueries(),
  });
}

export const useExport = () => useMutation({ mutationFn: () => invoke(contract.exportWrite, {}) });
