package dev.lampwright.broker;

import java.util.concurrent.CompletableFuture;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;

/** The broker's answer to one request, as Paho tells it: the finished token, or what went wrong. */
final class PublishOutcome extends CompletableFuture<IMqttToken> implements IMqttActionListener {
    @Override
    public void onSuccess(IMqttToken token) {
        complete(token);
    }

    @Override
    public void onFailure(IMqttToken token, Throwable cause) {
        completeExceptionally(cause);
    }
}
