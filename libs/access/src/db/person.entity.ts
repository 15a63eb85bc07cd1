import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { Role } from '#lib/platform';

@Entity('people')
export class PersonEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column({ type: 'uuid', name: 'practice_id', update: false })
  practiceId: string;

  @Column('text', { name: 'display_name' })
  displayName: string;

  @Column({ type: 'text', name: 'sign_in_name', update: false })
  signInName: string;

  @Column('text', { name: 'password_hash', select: false })
  passwordHash?: string;

  @Column('text')
  role: Role;

  @Column('boolean')
  active: boolean;
}
