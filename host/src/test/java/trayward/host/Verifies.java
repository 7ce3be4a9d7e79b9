package trayward.host;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Repeatable;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Names the safety requirement a test of the whole program stands for, and which side of it. */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@Repeatable(Verifies.All.class)
public @interface Verifies {

  /** Id of the requirement, such as {@code SR-18}. */
  String value();

  /** Which side the test shows. */
  Side side();

  /** The two sides of a requirement. */
  enum Side {
    /** Heat is refused, withheld or tripped when it must be. */
    WITHHOLDS,
    /** Nothing is in the way when all is well. */
    ALLOWS
  }

  /** Several requirements at one test. */
  @Documented
  @Retention(RetentionPolicy.RUNTIME)
  @Target(ElementType.METHOD)
  @interface All {
    /** Each of them. */
    Verifies[] value();
  }
}
