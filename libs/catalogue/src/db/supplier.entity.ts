import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { SupplierLanguage } from '../domain/supplier-language.js';

@Entity('suppliers')
export class SupplierEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  name: string;

  @Column('text', { nullable: true })
  email: string | null;

  @Column('text')
  language: SupplierLanguage;

  @Column('text', { name: 'customer_number', nullable: true })
  customerNumber: string | null;

  @Column('boolean')
  active: boolean;
}
