import { describe, expect, it } from '@jest/globals';
import { ROLES } from '#lib/platform';
import { isAllowed, PERMISSIONS, PERMISSIONS_BY_ROLE } from './permissions.js';

describe('permissions', () => {
  it('know every role, and no other', () => {
    expect(Object.keys(PERMISSIONS_BY_ROLE).sort()).toEqual([...ROLES].sort());
  });

  it('let the owner do everything', () => {
    expect(PERMISSIONS_BY_ROLE.owner).toEqual(PERMISSIONS);
  });

  it('let the auditor read everything and change nothing but tokens', () => {
    const readable = PERMISSIONS.filter((permission) => permission.endsWith('.read'));
    expect([...PERMISSIONS_BY_ROLE.auditor].sort()).toEqual([...readable, 'tokens.own'].sort());
  });

  it('keep costs from the assistant, and people and the audit trail from all but few', () => {
    expect(isAllowed('assistant', 'costs.read')).toBe(false);
    expect(ROLES.filter((role) => isAllowed(role, 'people.manage'))).toEqual(['owner']);
    expect(ROLES.filter((role) => isAllowed(role, 'audit.read'))).toEqual(['auditor', 'owner']);
  });

  it('let the manager do all that an assistant may', () => {
    for (const permission of PERMISSIONS_BY_ROLE.assistant) {
      expect([permission, isAllowed('manager', permission)]).toEqual([permission, true]);
    }
  });

  it('name nothing twice', () => {
    for (const list of Object.values(PERMISSIONS_BY_ROLE)) {
      expect(new Set(list).size).toBe(list.length);
    }
  });
});
