import { keepPreviousData, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import type { ArchivePage } from '../../core/contract/archive.ts';
import { contract } from '../../core/contract/index.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';

const PAGE = 50;

/** Orders closed long ago that have the text in them, the newest closed first, page by page. */
export const useArchive = (text: string) =>
  useInfiniteQuery({
    queryKey: [...keys.archive, 'search', text],
    queryFn: ({ pageParam }) => invoke(contract.archiveSearch, { text, before: pageParam, limit: PAGE }),
    initialPageParam: null as ArchivePage['before'],
    getNextPageParam: ({ before }) => before,
    placeholderData: keepPreviousData,
    staleTime: 0,
  });

/** The newest of them, few, while someone types what to find; nothing is asked for a letter or none. */
export const useFoundInArchive = (text: string) =>
  useQuery({
    queryKey: [...keys.archive, 'find', text],
    queryFn: () => invoke(contract.archiveSearch, { text, before: null, limit: 5 }),
    enabled: text.length > 1,
    placeholderData: keepPreviousData,
    staleTime: 0,
  });

/** One of them with all that is known of it. */
export const useArchivedOrder = (orderId: string) =>
  useQuery({
    queryKey: [...keys.archive, 'order', orderId],
    queryFn: () => invoke(contract.archiveOrder, { orderId }),
    staleTime: 0,
  });

/** Customers of orders of any age, who ordered last first. */
export const useCustomers = () =>
  useQuery({
    queryKey: [...keys.archive, 'customers'],
    queryFn: () => invoke(contract.archiveCustomers, {}),
    select: ({ names }) => names,
    staleTime: 0,
  });
