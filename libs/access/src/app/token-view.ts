export interface TokenView {
  readonly id: string;
  readonly name: string;
  readonly createdAt: Date;
  readonly expiresAt: Date | null;
  readonly revokedAt: Date | null;
}

export const TOKEN_COLUMNS = `id, name, created_at AS "createdAt", expires_at AS "expiresAt",
  revoked_at AS "revokedAt"`;
