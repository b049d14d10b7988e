import { useCustomers } from '../../queries/archive.ts';
import { Suggest } from '../../ui/suggest.tsx';

interface Props {
  value: string;
  onChange: (customer: string) => void;
  error: string | undefined;
}

/** Who the work is for: names that were written before are offered while one types, of orders in the archive too. */
export function CustomerField(props: Props) {
  const { data: names = [] } = useCustomers();
  return <Suggest label="Customer" names={names} {...props} />;
}
