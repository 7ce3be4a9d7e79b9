package trayward.host.web.guard;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * A password as it is kept: stretched, never in clear. PBKDF2 of RFC 8018 with HMAC-SHA-256, as the
 * platform has it. Immutable.
 */
public final class PasswordHash {

  /**
   * Rounds for a new one: what OWASP's Password Storage Cheat Sheet asks at least for PBKDF2 with
   * HMAC-SHA-256 (from memory).
   */
  static final int ROUNDS = 600_000;

  /** More would keep a small computer busy for a minute at each login. */
  private static final int MOST_ROUNDS = 10_000_000;

  /** Fewest and most characters: NIST SP 800-63B, 5.1.1.2, asks for 8; the rest bounds the work. */
  public static final int LEAST = 8;

  public static final int MOST = 256;

  private static final String ALGORITHM = "PBKDF2WithHmacSHA256";
  private static final String WORD = "pbkdf2-hmac-sha256";
  private static final int SALT_BYTES = 16;
  private static final int HASH_BYTES = 32;

  /** Base64 of 16 and of 32 bytes. */
  private static final Pattern TEXT =
      Pattern.compile(WORD + " (\\d{1,9}) ([A-Za-z0-9+/]{22}==) ([A-Za-z0-9+/]{43}=)");

  private final int rounds;
  private final byte[] salt;
  private final byte[] hash;

  private PasswordHash(int rounds, byte[] salt, byte[] hash) {
    this.rounds = rounds;
    this.salt = salt;
    this.hash = hash;
  }

  /**
   * The hash of a new password, with a salt of its own; takes about a second on a small computer.
   */
  public static PasswordHash of(char[] password, SecureRandom random) {
    byte[] salt = new byte[SALT_BYTES];
    random.nextBytes(salt);
    return new PasswordHash(ROUNDS, salt, stretched(password, salt, ROUNDS));
  }

  /** The hash in a text of {@link #text}; empty where it is none, or a weaker one than ours. */
  public static Optional<PasswordHash> parse(String text) {
    Matcher told = TEXT.matcher(text);
    if (!told.matches()) {
      return Optional.empty();
    }
    int rounds = Integer.parseInt(told.group(1));
    if (rounds < ROUNDS || rounds > MOST_ROUNDS) {
      return Optional.empty();
    }
    Base64.Decoder from = Base64.getDecoder();
    return Optional.of(
        new PasswordHash(rounds, from.decode(told.group(2)), from.decode(told.group(3))));
  }

  /** Whether a password is of a length that is taken. */
  public static boolean fits(int length) {
    return length >= LEAST && length <= MOST;
  }

  /** Whether this is the password; takes as long for any that is of a length that is taken. */
  public boolean matches(char[] password) {
    return fits(password.length) && MessageDigest.isEqual(hash, stretched(password, salt, rounds));
  }

  /** One line for a file. */
  public String text() {
    Base64.Encoder to = Base64.getEncoder();
    return WORD + " " + rounds + " " + to.encodeToString(salt) + " " + to.encodeToString(hash);
  }

  private static byte[] stretched(char[] password, byte[] salt, int rounds) {
    PBEKeySpec spec = new PBEKeySpec(password, salt, rounds, HASH_BYTES * 8);
    try {
      return SecretKeyFactory.getInstance(ALGORITHM).generateSecret(spec).getEncoded();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java machine since 8 has " + ALGORITHM, e);
    } finally {
      spec.clearPassword();
    }
  }
}
