import { describe, expect, it } from '@jest/globals';
import { auditChanges } from './audit-changes.js';

describe('what an entry of the audit trail says', () => {
  it('is read from before and after', () => {
    const before = { id: 'p', displayName: 'Mara', role: 'assistant', active: true };
    const after = { ...before, role: 'manager' };
    expect(auditChanges({ before, after, passwordChanged: false })).toEqual([
      { field: 'role', from: 'assistant', to: 'manager' },
    ]);
    expect(auditChanges({ before, after: before, passwordChanged: true })).toEqual([
      { field: 'passwordChanged', to: true },
    ]);
  });

  it('is read from fields that say from and to', () => {
    expect(auditChanges({ name: { from: 'A', to: 'B' }, shade: { from: 'C', to: null } })).toEqual([
      { field: 'name', from: 'A', to: 'B' },
      { field: 'shade', from: 'C', to: null },
    ]);
  });

  it('is read from the fields as they are, without what is not set', () => {
    expect(auditChanges({ id: 'x', name: 'Paste', shade: null, supplierId: 's' })).toEqual([
      { field: 'name', to: 'Paste' },
    ]);
    expect(auditChanges({})).toEqual([]);
  });
});
