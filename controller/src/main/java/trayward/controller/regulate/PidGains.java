package trayward.controller.regulate;

/**
 * Settings of an ISA-form PID (Åström and Hägglund).
 *
 * @param gain proportional gain K, duty per K
 * @param integralS integral time Ti, s
 * @param derivativeS derivative time Td, s; 0 for none
 * @param filter derivative filter ratio N: the filter's time constant is Td/N
 * @param weight set-point weight b, 0 to 1
 * @param trackingS back-calculation time Tt, s
 */
public record PidGains(
    double gain,
    double integralS,
    double derivativeS,
    double filter,
    double weight,
    double trackingS) {}
