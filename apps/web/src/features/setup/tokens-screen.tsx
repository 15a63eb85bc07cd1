import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { RowButton } from '../../ui/row-button.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import { Moment } from '../../ui/values.js';
import { type Token, tokensQuery } from './api/tokens.js';
import css from './parts.module.css';
import { RevokeDialog } from './revoke-dialog.js';
import { TokenDialog } from './token-dialog.js';

const route = getRouteApi('/in/setup/tokens');

type State = 'works' | 'expired' | 'revoked';
const TONES: Readonly<Record<State, Tone>> = { works: 'good', expired: 'quiet', revoked: 'quiet' };

function stateOf({ revokedAt, expiresAt }: Token): State {
  if (revokedAt !== null) return 'revoked';
  return expiresAt !== null && Date.parse(expiresAt) <= Date.now() ? 'expired' : 'works';
}

export function TokensScreen() {
  const w = useText().setupTokens;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const tokens = useQuery(tokensQuery);
  const [revoking, setRevoking] = useState<Token>();
  const columns = useColumns(setRevoking);
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        <Button onClick={() => void navigate({ search: { new: '1' as const } })}>{w.add}</Button>
      </PageHead>
      <Loaded query={tokens}>
        {({ items }) => (
          <DataTable
            label={w.title}
            columns={columns}
            rows={items}
            rowKey={(row) => row.id}
            empty={<EmptyState title={w.empty} hint={w.emptyHint} />}
          />
        )}
      </Loaded>
      <TokenDialog
        opened={search.new !== undefined}
        onClose={() => void navigate({ search: {} })}
      />
      <RevokeDialog token={revoking} onClose={() => setRevoking(undefined)} />
    </>
  );
}

function useColumns(onRevoke: (token: Token) => void): Column<Token>[] {
  const w = useText().setupTokens;
  return [
    { id: 'name', head: w.columns.name, cell: ({ name }) => <strong>{name}</strong> },
    {
      id: 'created',
      head: w.columns.created,
      cell: ({ createdAt }) => <Moment value={createdAt} />,
    },
    {
      id: 'expires',
      head: w.columns.expires,
      cell: ({ expiresAt }) =>
        expiresAt === null ? (
          <span className={css.quiet}>{w.untilRevoked}</span>
        ) : (
          <Moment value={expiresAt} />
        ),
    },
    {
      id: 'state',
      head: w.columns.state,
      cell: (token) => (
        <StatusMark tone={TONES[stateOf(token)]}>{w.states[stateOf(token)]}</StatusMark>
      ),
    },
    {
      id: 'revoke',
      head: '',
      align: 'end',
      cell: (token) =>
        stateOf(token) === 'works' && (
          <RowButton label={w.revokeOf(token.name)} onClick={() => onRevoke(token)}>
            {w.revoke}
          </RowButton>
        ),
    },
  ];
}
