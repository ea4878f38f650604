;; The sums of floor.js and floor-worth.js that go through the rows, by hand for WebAssembly with
;; SIMD. A row is four numbers of 64 bits beside one another: its chance, and those of its siblings,
;; twins and cousins; so two instructions do what floor.js does with four arrays. All places are in
;; bytes; nothing is kept here, floor-simd.js says where everything lies.
(module
  (import "floor" "memory" (memory 1))

  ;; Takes one answer into the rows: each times the four factors of its code, or where it has no code
  ;; those of its kind, which follow in the table.
  (func (export "answered")
    (param $row i32) (param $code i32) (param $kind i32) (param $table i32) (param $codes i32)
    (param $end i32)
    (local $c i32) (local $at i32)
    (loop $next
      (local.set $c (i32.load16_u (local.get $code)))
      (local.set $at (i32.add (local.get $table) (i32.shl
        (select
          (local.get $c)
          (i32.add (local.get $codes) (i32.load (local.get $kind)))
          (local.get $c))
        (i32.const 5))))
      (v128.store (local.get $row)
        (f64x2.mul (v128.load (local.get $row)) (v128.load (local.get $at))))
      (v128.store offset=16 (local.get $row)
        (f64x2.mul (v128.load offset=16 (local.get $row)) (v128.load offset=16 (local.get $at))))
      (local.set $code (i32.add (local.get $code) (i32.const 2)))
      (local.set $kind (i32.add (local.get $kind) (i32.const 4)))
      (local.set $row (i32.add (local.get $row) (i32.const 32)))
      (br_if $next (i32.lt_u (local.get $row) (local.get $end)))))

  ;; The same for what the answers on one part come to, by the row's class.
  (func (export "parted")
    (param $row i32) (param $class i32) (param $table i32) (param $end i32)
    (local $at i32)
    (loop $next
      (local.set $at (i32.add (local.get $table)
        (i32.shl (i32.load (local.get $class)) (i32.const 5))))
      (v128.store (local.get $row)
        (f64x2.mul (v128.load (local.get $row)) (v128.load (local.get $at))))
      (v128.store offset=16 (local.get $row)
        (f64x2.mul (v128.load offset=16 (local.get $row)) (v128.load offset=16 (local.get $at))))
      (local.set $class (i32.add (local.get $class) (i32.const 4)))
      (local.set $row (i32.add (local.get $row) (i32.const 32)))
      (br_if $next (i32.lt_u (local.get $row) (local.get $end)))))

  ;; Relatives differ in something: takes off those that would not (`less`, 0 for the row itself),
  ;; and adds the rows up by kind, four numbers each, into `sums`.
  (func (export "related")
    (param $row i32) (param $less i32) (param $kind i32) (param $sums i32) (param $end i32)
    (local $chance v128) (local $low v128) (local $high v128) (local $zero v128)
    (local $all_low v128) (local $all_high v128) (local $k i32) (local $of i32)
    (local.set $of (i32.load (local.get $kind)))
    (loop $next
      (local.set $low (v128.load (local.get $row)))
      (local.set $high (v128.load offset=16 (local.get $row)))
      (local.set $chance (f64x2.splat (f64x2.extract_lane 0 (local.get $low))))
      (local.set $low (f64x2.pmax (local.get $zero) (f64x2.sub (local.get $low)
        (f64x2.mul (local.get $chance) (v128.load (local.get $less))))))
      (local.set $high (f64x2.pmax (local.get $zero) (f64x2.sub (local.get $high)
        (f64x2.mul (local.get $chance) (v128.load offset=16 (local.get $less))))))
      (v128.store (local.get $row) (local.get $low))
      (v128.store offset=16 (local.get $row) (local.get $high))
      (local.set $k (i32.load (local.get $kind)))
      (if (i32.ne (local.get $k) (local.get $of))
        (then ;; rows of a kind mostly stand together: only here are its sums written
          (call $add (i32.add (local.get $sums) (i32.shl (local.get $of) (i32.const 5)))
            (local.get $all_low) (local.get $all_high))
          (local.set $all_low (local.get $zero))
          (local.set $all_high (local.get $zero))
          (local.set $of (local.get $k))))
      (local.set $all_low (f64x2.add (local.get $all_low) (local.get $low)))
      (local.set $all_high (f64x2.add (local.get $all_high) (local.get $high)))
      (local.set $kind (i32.add (local.get $kind) (i32.const 4)))
      (local.set $less (i32.add (local.get $less) (i32.const 32)))
      (local.set $row (i32.add (local.get $row) (i32.const 32)))
      (br_if $next (i32.lt_u (local.get $row) (local.get $end))))
    (call $add (i32.add (local.get $sums) (i32.shl (local.get $of) (i32.const 5)))
      (local.get $all_low) (local.get $all_high)))

  (func $add (param $at i32) (param $low v128) (param $high v128)
    (v128.store (local.get $at) (f64x2.add (v128.load (local.get $at)) (local.get $low)))
    (v128.store offset=16 (local.get $at)
      (f64x2.add (v128.load offset=16 (local.get $at)) (local.get $high))))

  ;; Rows times one factor, so that all adds up to 1. Into `pair`, two numbers a row: its chance, and
  ;; how much its relatives count (`wary`, 0 for the row itself). Into `most`, the largest of both.
  (func (export "scaled")
    (param $row i32) (param $pair i32) (param $wary i32) (param $factor f64) (param $most i32)
    (param $end i32)
    (local $by v128) (local $low v128) (local $high v128) (local $both v128) (local $best v128)
    (local $wary_low v128) (local $wary_high v128)
    (local.set $by (f64x2.splat (local.get $factor)))
    (local.set $wary_low (v128.load (local.get $wary)))
    (local.set $wary_high (v128.load offset=16 (local.get $wary)))
    (loop $next
      (local.set $low (f64x2.mul (v128.load (local.get $row)) (local.get $by)))
      (local.set $high (f64x2.mul (v128.load offset=16 (local.get $row)) (local.get $by)))
      (v128.store (local.get $row) (local.get $low))
      (v128.store offset=16 (local.get $row) (local.get $high))
      (local.set $both (f64x2.add
        (f64x2.mul (local.get $low) (local.get $wary_low))
        (f64x2.mul (local.get $high) (local.get $wary_high))))
      (local.set $both (f64x2.replace_lane 1 (local.get $low) (f64.add
        (f64x2.extract_lane 0 (local.get $both)) (f64x2.extract_lane 1 (local.get $both)))))
      (v128.store (local.get $pair) (local.get $both))
      (local.set $best (f64x2.pmax (local.get $best) (local.get $both)))
      (local.set $pair (i32.add (local.get $pair) (i32.const 16)))
      (local.set $row (i32.add (local.get $row) (i32.const 32)))
      (br_if $next (i32.lt_u (local.get $row) (local.get $end))))
    (v128.store (local.get $most) (local.get $best)))

  ;; Of both numbers of a pair: what lies under each of eight thresholds is added up; a pair of
  ;; thresholds, a pair of sums, sixteen bytes each. Most rows lie over the first and are done.
  (func (export "under")
    (param $pair i32) (param $limit i32) (param $sum i32) (param $end i32)
    (local $both v128) (local $low v128)
    (local $l0 v128) (local $l1 v128) (local $l2 v128) (local $l3 v128)
    (local $l4 v128) (local $l5 v128) (local $l6 v128) (local $l7 v128)
    (local $s0 v128) (local $s1 v128) (local $s2 v128) (local $s3 v128)
    (local $s4 v128) (local $s5 v128) (local $s6 v128) (local $s7 v128)
    (local.set $l0 (v128.load (local.get $limit)))
    (local.set $l1 (v128.load offset=16 (local.get $limit)))
    (local.set $l2 (v128.load offset=32 (local.get $limit)))
    (local.set $l3 (v128.load offset=48 (local.get $limit)))
    (local.set $l4 (v128.load offset=64 (local.get $limit)))
    (local.set $l5 (v128.load offset=80 (local.get $limit)))
    (local.set $l6 (v128.load offset=96 (local.get $limit)))
    (local.set $l7 (v128.load offset=112 (local.get $limit)))
    (loop $next
      (local.set $both (v128.load (local.get $pair)))
      (local.set $low (f64x2.lt (local.get $both) (local.get $l0)))
      (if (v128.any_true (local.get $low))
        (then
          (local.set $s0 (f64x2.add (local.get $s0)
            (v128.and (local.get $both) (local.get $low))))
          (local.set $s1 (f64x2.add (local.get $s1)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l1)))))
          (local.set $s2 (f64x2.add (local.get $s2)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l2)))))
          (local.set $s3 (f64x2.add (local.get $s3)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l3)))))
          (local.set $s4 (f64x2.add (local.get $s4)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l4)))))
          (local.set $s5 (f64x2.add (local.get $s5)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l5)))))
          (local.set $s6 (f64x2.add (local.get $s6)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l6)))))
          (local.set $s7 (f64x2.add (local.get $s7)
            (v128.and (local.get $both) (f64x2.lt (local.get $both) (local.get $l7)))))))
      (local.set $pair (i32.add (local.get $pair) (i32.const 16)))
      (br_if $next (i32.lt_u (local.get $pair) (local.get $end))))
    (v128.store (local.get $sum) (local.get $s0))
    (v128.store offset=16 (local.get $sum) (local.get $s1))
    (v128.store offset=32 (local.get $sum) (local.get $s2))
    (v128.store offset=48 (local.get $sum) (local.get $s3))
    (v128.store offset=64 (local.get $sum) (local.get $s4))
    (v128.store offset=80 (local.get $sum) (local.get $s5))
    (v128.store offset=96 (local.get $sum) (local.get $s6))
    (v128.store offset=112 (local.get $sum) (local.get $s7)))

  ;; The rows whose chance is enough, variant by variant (`begin`: the first row of each, and one
  ;; after the last): the rows and their weights; by variant that is left its first place among them
  ;; and its chance. Gives how many variants are left.
  (func (export "kept")
    (param $pair i32) (param $begin i32) (param $variants i32) (param $least f64)
    (param $rows i32) (param $weights i32) (param $starts i32) (param $chance i32)
    (result i32)
    (local $i i32) (local $end i32) (local $count i32) (local $start i32) (local $left i32)
    (local $one f64) (local $all f64)
    (loop $variant
      (local.set $i (i32.load (local.get $begin)))
      (local.set $end (i32.load offset=4 (local.get $begin)))
      (local.set $start (local.get $count))
      (local.set $all (f64.const 0))
      (loop $row
        (local.set $one (f64.load (i32.add (local.get $pair)
          (i32.shl (local.get $i) (i32.const 4)))))
        (if (i32.and
              (f64.ge (local.get $one) (local.get $least))
              (f64.gt (local.get $one) (f64.const 0)))
          (then
            (i32.store (i32.add (local.get $rows) (i32.shl (local.get $count) (i32.const 2)))
              (local.get $i))
            (f64.store (i32.add (local.get $weights) (i32.shl (local.get $count) (i32.const 3)))
              (local.get $one))
            (local.set $all (f64.add (local.get $all) (local.get $one)))
            (local.set $count (i32.add (local.get $count) (i32.const 1)))))
        (local.set $i (i32.add (local.get $i) (i32.const 1)))
        (br_if $row (i32.lt_u (local.get $i) (local.get $end))))
      (if (i32.gt_u (local.get $count) (local.get $start))
        (then
          (i32.store (i32.add (local.get $starts) (i32.shl (local.get $left) (i32.const 2)))
            (local.get $start))
          (f64.store (i32.add (local.get $chance) (i32.shl (local.get $left) (i32.const 3)))
            (local.get $all))
          (local.set $left (i32.add (local.get $left) (i32.const 1)))))
      (local.set $begin (i32.add (local.get $begin) (i32.const 4)))
      (local.set $variants (i32.sub (local.get $variants) (i32.const 1)))
      (br_if $variant (local.get $variants)))
    (i32.store (i32.add (local.get $starts) (i32.shl (local.get $left) (i32.const 2)))
      (local.get $count))
    (local.get $left))

  ;; The rows whose relatives count enough: the rows, and four numbers each: what would differ in
  ;; nothing, and each sort with that. `less`, `wary` as above. Gives how many.
  (func (export "near")
    (param $pair i32) (param $row i32) (param $less i32) (param $wary i32) (param $n i32)
    (param $least f64) (param $rows i32) (param $four i32)
    (result i32)
    (local $i i32) (local $count i32) (local $one f64) (local $chance v128)
    (local $same_low v128) (local $same_high v128) (local $low v128) (local $high v128)
    (loop $next
      (local.set $one (f64.load offset=8 (local.get $pair)))
      (if (i32.and
            (f64.ge (local.get $one) (local.get $least))
            (f64.gt (local.get $one) (f64.const 0)))
        (then
          (local.set $chance (f64x2.splat (f64.load (local.get $row))))
          (local.set $same_low (f64x2.mul (v128.load (local.get $wary))
            (f64x2.mul (v128.load (local.get $less)) (local.get $chance))))
          (local.set $same_high (f64x2.mul (v128.load offset=16 (local.get $wary))
            (f64x2.mul (v128.load offset=16 (local.get $less)) (local.get $chance))))
          (local.set $low (f64x2.add (local.get $same_low)
            (f64x2.mul (v128.load (local.get $wary)) (v128.load (local.get $row)))))
          (local.set $high (f64x2.add (local.get $same_high)
            (f64x2.mul (v128.load offset=16 (local.get $wary))
              (v128.load offset=16 (local.get $row)))))
          (v128.store (local.get $four) (f64x2.replace_lane 0 (local.get $low)
            (f64.add (f64x2.extract_lane 1 (local.get $same_low)) (f64.add
              (f64x2.extract_lane 0 (local.get $same_high))
              (f64x2.extract_lane 1 (local.get $same_high))))))
          (v128.store offset=16 (local.get $four) (local.get $high))
          (i32.store (local.get $rows) (local.get $i))
          (local.set $rows (i32.add (local.get $rows) (i32.const 4)))
          (local.set $four (i32.add (local.get $four) (i32.const 32)))
          (local.set $count (i32.add (local.get $count) (i32.const 1)))))
      (local.set $pair (i32.add (local.get $pair) (i32.const 16)))
      (local.set $row (i32.add (local.get $row) (i32.const 32)))
      (local.set $less (i32.add (local.get $less) (i32.const 32)))
      (local.set $i (i32.add (local.get $i) (i32.const 1)))
      (br_if $next (i32.lt_u (local.get $i) (local.get $n))))
    (local.get $count))

  ;; A row's class for one question: its code and what is known of its part.
  (func $class (param $row i32) (param $code i32) (param $of i32) (param $width i32) (result i32)
    (i32.add
      (i32.mul (local.get $width) (i32.load16_u
        (i32.add (local.get $code) (i32.shl (local.get $row) (i32.const 1)))))
      (i32.load (i32.add (local.get $of) (i32.shl (local.get $row) (i32.const 2))))))

  ;; Adds the chance of each variant that is of one class to what the class holds; the places of the
  ;; others are put into `mixed`. Gives how many these are.
  (func (export "held")
    (param $code i32) (param $of i32) (param $width i32) (param $rows i32) (param $starts i32)
    (param $chance i32) (param $left i32) (param $held i32) (param $mixed i32)
    (result i32)
    (local $o i32) (local $n i32) (local $to i32) (local $c i32) (local $at i32) (local $count i32)
    (loop $variant
      (local.set $n (i32.add (local.get $rows)
        (i32.shl (i32.load (local.get $starts)) (i32.const 2))))
      (local.set $to (i32.add (local.get $rows)
        (i32.shl (i32.load offset=4 (local.get $starts)) (i32.const 2))))
      (local.set $c (call $class (i32.load (local.get $n)) (local.get $code) (local.get $of)
        (local.get $width)))
      (block $one
        (loop $row
          (local.set $n (i32.add (local.get $n) (i32.const 4)))
          (br_if $one (i32.ge_u (local.get $n) (local.get $to)))
          (br_if $row (i32.eq (local.get $c) (call $class (i32.load (local.get $n))
            (local.get $code) (local.get $of) (local.get $width))))))
      (if (i32.ge_u (local.get $n) (local.get $to))
        (then
          (local.set $at (i32.add (local.get $held) (i32.shl (local.get $c) (i32.const 3))))
          (f64.store (local.get $at)
            (f64.add (f64.load (local.get $at)) (f64.load (local.get $chance)))))
        (else
          (i32.store (i32.add (local.get $mixed) (i32.shl (local.get $count) (i32.const 2)))
            (local.get $o))
          (local.set $count (i32.add (local.get $count) (i32.const 1)))))
      (local.set $starts (i32.add (local.get $starts) (i32.const 4)))
      (local.set $chance (i32.add (local.get $chance) (i32.const 8)))
      (local.set $o (i32.add (local.get $o) (i32.const 1)))
      (br_if $variant (i32.lt_u (local.get $o) (local.get $left))))
    (local.get $count))

  ;; Adds the four numbers of each of these rows to those of its class.
  (func (export "nearest")
    (param $code i32) (param $of i32) (param $width i32) (param $rows i32) (param $four i32)
    (param $held i32) (param $end i32)
    (loop $next
      (call $add
        (i32.add (local.get $held) (i32.shl
          (call $class (i32.load (local.get $rows)) (local.get $code) (local.get $of)
            (local.get $width))
          (i32.const 5)))
        (v128.load (local.get $four))
        (v128.load offset=16 (local.get $four)))
      (local.set $four (i32.add (local.get $four) (i32.const 32)))
      (local.set $rows (i32.add (local.get $rows) (i32.const 4)))
      (br_if $next (i32.lt_u (local.get $rows) (local.get $end)))))

  ;; What reading so many bytes costs by itself: their sum as numbers of 64 bits, 64 bytes a turn.
  (func (export "read") (param $at i32) (param $end i32) (result f64)
    (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (loop $next
      (local.set $a (f64x2.add (local.get $a) (v128.load (local.get $at))))
      (local.set $b (f64x2.add (local.get $b) (v128.load offset=16 (local.get $at))))
      (local.set $c (f64x2.add (local.get $c) (v128.load offset=32 (local.get $at))))
      (local.set $d (f64x2.add (local.get $d) (v128.load offset=48 (local.get $at))))
      (local.set $at (i32.add (local.get $at) (i32.const 64)))
      (br_if $next (i32.lt_u (local.get $at) (local.get $end))))
    (local.set $a (f64x2.add (f64x2.add (local.get $a) (local.get $b))
      (f64x2.add (local.get $c) (local.get $d))))
    (f64.add (f64x2.extract_lane 0 (local.get $a)) (f64x2.extract_lane 1 (local.get $a)))))
