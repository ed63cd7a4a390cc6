/**
 * The connection to the broker: address, login and certificates, reconnecting, subscriptions, publishing and the last will. Messages come
 * out as a topic and bytes; what they mean is decided elsewhere. Apart from the demo, the only place that imports the MQTT client.
 */
package dev.lampwright.broker;
