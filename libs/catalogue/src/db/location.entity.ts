import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { LocationKind } from '../domain/location-tree.js';

@Entity('locations')
export class LocationEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  name: string;

  @Column('text')
  kind: LocationKind;

  @Column('uuid', { name: 'parent_id', nullable: true })
  parentId: string | null;

  @Column('boolean')
  active: boolean;
}
